import { numeral } from "../../words/numbers.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";
import { portsWords, portWords } from "../supplyWords.ts";

export const wrongQuadrant: RuleWords<"wrong-quadrant"> = {
  title: "A multiswitch input gets the wrong quadrant",
  explain:
    "Each satellite input of a multiswitch stands for one quadrant and must be fed by that output of a quattro LNB. " +
    "Swapped leads, or an LNB with switched outputs in its place, put other transponders where the receivers look; an open input leaves its quadrant out.",
  source: "common practice, no source",
  severities: ["error", "warning"],
  message: (told) => {
    const { at, facts, parts } = told.finding;
    const name = partName(at.part);
    switch (facts.kind) {
      case "swapped": {
        const leads = portsWords(told.record, facts.ports);
        const [first] = parts;
        if (first !== at.part)
          return `${capital(leads)} of ${name} get each other’s signal, since they are swapped at ${partName(first)}.`;
        return facts.ports.length === 2
          ? `${capital(leads)} are swapped at ${name}: each gets the other’s quadrant.`
          : `${capital(leads)} are mixed up at ${name}: each gets another one’s quadrant.`;
      }
      case "misplaced": {
        const what =
          facts.foreign === undefined
            ? QUADRANT_WORDS[facts.gets]
            : `${QUADRANT_WORDS[facts.gets]} of ${facts.foreign.satellite} from ${partName(facts.foreign.dish)}`;
        const belongs =
          facts.foreign === undefined
            ? `stands for ${planeWords(facts.expects)}`
            : "stands for another satellite";
        return `${capital(portWords(told.record, at.port ?? ""))} of ${name} gets ${what}, but ${belongs}.`;
      }
      case "no quattro":
        return `${partName(facts.converter)} gives ${FEED_WORDS[facts.feed]}; ${name} needs a ${facts.feed === "quadrant" ? "wideband" : "quattro"} LNB on ${portsWords(told.record, facts.ports)}.`;
      case "open":
        return `${capital(portWords(told.record, at.port ?? ""))} of ${name} is open: ${planeWords(facts.expects)} is missing for all behind it.`;
    }
  },
  cure: ({ finding: { at, facts, parts } }) => {
    switch (facts.kind) {
      case "swapped":
        return facts.ports.length === 2
          ? `Swap the two leads back at ${partName(parts[0])}.`
          : `Connect each lead at ${partName(parts[0])} to the input that bears its name.`;
      case "misplaced":
        return `Move the lead at ${partName(parts[0])} to the input that bears its name.`;
      case "no quattro":
        return `Replace ${partName(facts.converter)} with a ${facts.feed === "quadrant" ? "wideband" : "quattro"} LNB.`;
      case "open":
        return `Connect this input of ${partName(at.part)} to the output of the LNB that bears the same name.`;
    }
  },
  customer: (told) => {
    const name = plainName(told, told.finding.at.part);
    switch (told.finding.facts.kind) {
      case "no quattro":
        return "The part on the dish arm does not suit the box behind it, so channels are not where they are looked for.";
      case "open":
        return `A cable is missing at ${name}, so some of the satellite channels reach nobody.`;
      default:
        return `A cable sits on the wrong connector of ${name}, so channels are not where the receivers look for them.`;
    }
  },
  trade: (told) => {
    const { at, facts } = told.finding;
    const which = `${capital(portWords(told.record, at.port ?? ""))} of ${partName(at.part)}`;
    const stands = `${which} stands for one of four quadrants. The low band has an oscillator of 9750 MHz, the high band one of ${numeral(10_600)} MHz, each vertical and horizontal.`;
    switch (facts.kind) {
      case "open":
        return `${stands} Nothing is connected there. A receiver that asks for this quadrant is switched to this input and finds nothing: about a quarter of the transponders.`;
      case "no quattro":
        return `${stands} ${partName(facts.converter)} gives ${FEED_WORDS[facts.feed]}, which nobody here can set. So the same transponders come by several inputs, or at other frequencies than the receivers calculate.`;
      default:
        return `${stands} What comes in now is another one. A receiver that asks for this quadrant is switched to this input and finds other transponders at the frequencies it calculates, or none.`;
    }
  },
  measure: (told) => {
    const { at, facts } = told.finding;
    const where = `${portWords(told.record, at.port ?? "").replace("its input", "the input")} of ${partName(at.part)}`;
    if (facts.kind === "open")
      return `Look at ${where}: no lead is screwed on. A satellite meter on the free output of the LNB shows that the missing quadrant is there.`;
    if (facts.kind === "no quattro")
      return `Satellite meter on the cable at ${where}: feed it with 13 V, then with 18 V. If the transponders change, the output is a switched one; check the label of ${partName(facts.converter)} as well.`;
    return `Satellite meter on the cable at ${where}, on a transponder that only the expected quadrant has: no lock. The neighbouring input on which it locks tells which leads are swapped. Check the marks at the LNB as well.`;
  },
  neighbours: ["receiver-misses", "wrong-feed"],
  picture: (told) => {
    const spot = spotOf(told);
    if (!spot) return null;
    const marks = markCarriers(spectrumAt(told, spot), (band) => band.origin.service === "satellite", {
      kind: "wrong",
      label: "another quadrant",
    });
    return pictureOf(told, spot, marks);
  },
};

const QUADRANT_WORDS: Readonly<Record<string, string>> = {
  VL: "vertical low",
  VH: "vertical high",
  HL: "horizontal low",
  HH: "horizontal high",
  V: "vertical",
  H: "horizontal",
};

const FEED_WORDS = {
  switched: "switched outputs",
  wideband: "whole polarisations",
  "single-cable": "a single-cable feed",
  quadrant: "a quadrant at each output",
} as const;

/** "horizontal high", "horizontal high of satellite 2". */
function planeWords(plane: string): string {
  const [, satellite, quadrant = ""] = /^(?:(\d+):)?(.+)$/.exec(plane) ?? [];
  const words = QUADRANT_WORDS[quadrant] ?? quadrant;
  return satellite === undefined ? words : `${words} of satellite ${satellite}`;
}
