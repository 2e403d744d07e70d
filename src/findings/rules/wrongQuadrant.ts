import { markCarriers, pictureOf, spectrumAt, spotOf } from "../../sentences/explain/picture.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { bandName, partName } from "../../sentences/phrases.ts";
import { SILENCE } from "../../signal/band.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** A multiswitch input that is not fed with the quadrant it is meant for. */
export const wrongQuadrant: SpokenRule = {
  id: "wrong-quadrant",
  title: "A multiswitch input gets the wrong quadrant",
  explain:
    "Each satellite input of a multiswitch stands for one quadrant and must be fed by that output of a quattro converter. " +
    "Swapped cables, or a converter with switched outputs in its place, put other transponders where the receivers look.",
  source: "common practice, no source",
  check: ({ record }) => {
    // Without a switch no input can stand for a quadrant; and most parts have none.
    if (!record.power.switches) return [];
    const paths = record.kind.signal(record.options, { id: record.part.id, powered: true }).paths ?? [];
    const expected = new Map<string, string>();
    for (const path of paths) {
      const quadrant = /(?:^|:)([VH][LH])$/.exec(path.condition?.setting ?? "")?.[1];
      // A path that converts or picks for itself is no connector meant for one quadrant.
      if (quadrant && !path.loMHz && !path.from.startsWith("#")) expected.set(path.from, quadrant);
    }
    return [...expected].flatMap(([port, quadrant]) => {
      const bands = (record.inputs[port] ?? SILENCE).bands.filter((b) => b.origin.service === "satellite");
      const wrong = bands.find(
        (b) =>
          b.conditions.length > 0 ||
          `${b.origin.polarisation}${b.half?.[0]?.toUpperCase() ?? ""}` !== quadrant,
      );
      if (!wrong) return [];
      const label = record.ports.find((p) => p.id === port)?.label ?? port;
      const what = wrong.conditions.length > 0 ? "a switched output" : bandName(wrong);
      return [
        {
          severity: "error" as const,
          parts: [record.part.id, wrong.origin.part],
          wires: wireAt(record, port),
          message: `Input ${label} of ${partName(record.part.id)} expects ${QUADRANT_WORDS[quadrant] ?? quadrant}, but gets ${what}.`,
          source: wrongQuadrant.source,
          port,
          service: "satellite" as const,
          cure: "Join each input to the output of a quattro converter that bears the same name.",
        },
      ];
    });
  },
  explanation: {
    severities: ["error"],
    customer: (facts) =>
      `A cable sits on the wrong connector of ${plainName(facts, facts.finding.parts[0])}, so channels are not where the receivers look for them.`,
    trade: (facts) => {
      const { finding } = facts;
      const label = facts.record?.ports.find((p) => p.id === finding.at.port)?.label ?? "";
      return (
        `Input ${label} of ${partName(finding.parts[0] ?? "")} stands for one of four quadrants: low band with an oscillator of 9 750 MHz, high band with 10 600 MHz, each vertical and ` +
        "horizontal. What comes in now is another one, or a switched output that nobody here switches. A receiver that asks for this quadrant is " +
        "connected to this input and finds other transponders at the frequencies it works out, or none."
      );
    },
    measure: (facts) =>
      `Satellite meter on the cable at this input of ${partName(facts.finding.parts[0] ?? "")}, on a transponder that only the expected quadrant has: no lock. On the neighbouring inputs: the ` +
      "one on which it locks tells which two cables are swapped. Check the marks at the converter as well.",
    neighbours: ["receiver-misses", "wrong-feed"],
    picture: (facts) => {
      const spot = spotOf(facts);
      if (!spot) return null;
      const marks = markCarriers(spectrumAt(facts, spot), (band) => band.origin.service === "satellite", {
        kind: "wrong",
        label: "another quadrant",
      });
      return pictureOf(facts, spot, marks);
    },
  },
};

const QUADRANT_WORDS: Readonly<Record<string, string>> = {
  VL: "vertical low",
  VH: "vertical high",
  HL: "horizontal low",
  HH: "horizontal high",
};
