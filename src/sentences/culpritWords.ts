/** What a culprit does, in words: for the trade, as what is to be done, and for whoever lives there. */

import type { Blamed } from "../findings/blame/culprit.ts";
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { plainName } from "./explain/plainWords.ts";
import { partName } from "./phrases.ts";
import type { ToldFinding } from "./ruleWords.ts";

/** One sentence: "⟦joint⟧ is a faulty joint and loses 6 dB." */
export function culpritWords(culprit: Blamed): string {
  return `${culpritClause(culprit)}.`;
}

/** One sentence about what makes levels differ: a part counts by how far it moves them apart, not by its loss. */
export function leanWords(culprit: Blamed): string {
  const makes = `makes ${numeral(culprit.excessDb)} dB of it.`;
  if (culprit.does === "long cable" && culprit.lengthM !== undefined)
    return `${partName(culprit.part)} is ${numeral(culprit.lengthM)} m long and ${makes}`;
  if (culprit.does === "bad joint") return `${partName(culprit.part)} is a faulty joint and ${makes}`;
  return culpritWords(culprit);
}

/** What it does as a clause that another may follow behind a colon. */
export function culpritClause(culprit: Blamed): string {
  const name = partName(culprit.part);
  const loss = `${numeral(Math.abs(culprit.amount))} dB`;
  const excess = `${numeral(culprit.excessDb)} dB`;
  switch (culprit.does) {
    case "bad joint":
      return `${name} is a faulty joint and loses ${loss}`;
    case "off aim":
      return `${name} is off its satellite and loses ${excess}`;
    case "turned":
      return `${name} is turned by ${numeral(culprit.amount, 0)}° against the satellite’s polarisation`;
    case "wrong polariser":
      return `${name} is not made for the satellite’s kind of polarisation (linear or circular)`;
    case "mixes polarisations":
      return `${name} keeps the other polarisation only ${loss} down`;
    case "mixes inputs":
      return `${name} keeps its inputs only ${loss} apart`;
    case "hears neighbours":
      return `${name} hears the satellites beside its own, only ${loss} weaker`;
    case "in rain":
      return `Rain before ${name} mixes the polarisations`;
    case "turned away":
      return culprit.facesAnother
        ? `${name} faces another transmitter and loses ${excess} of this one`
        : `${name} points away from the transmitter and loses ${excess}`;
    case "other polarisation":
      return `The elements of ${name} lie in the other polarisation, which loses ${excess}`;
    case "weak source":
      if (culprit.isDish) return `${name} receives too little signal`;
      return culprit.belowBestDb === undefined
        ? `${name} gives only ${level(culprit)}`
        : `${name} gives only ${level(culprit)}, ${numeral(culprit.belowBestDb)} dB less than its strongest signal`;
    case "unclean source":
      return `${name} itself has a C/N of only ${numeral(culprit.amount)} dB`;
    case "low output":
      return `${name} gives only ${level(culprit)}`;
    case "strong source":
      return culprit.isDish ? `${name} receives a very strong signal` : `${name} gives ${level(culprit)}`;
    case "uneven source":
      return `${name} itself receives them ${excess} apart`;
    case "switched off":
      return `${name} is switched off and loses ${loss}`;
    case "unfed":
      return `${name} gets no supply and loses ${loss}`;
    case "low gain":
      if (Math.abs(culprit.amount) < 0.05) return `${name} is set too low and does not amplify at all`;
      return culprit.amount > 0
        ? `${name} is set too low and amplifies by only ${loss}`
        : `${name} is set too low and loses ${loss}`;
    case "little gain":
      return `${name} amplifies by only ${loss}, ${excess} less than usual`;
    case "high gain":
      return `${name} amplifies by ${loss}, which is too much here`;
    case "noisy":
      return `${name} adds too much noise, with a noise figure of ${numeral(culprit.amount)} dB`;
    case "attenuates":
      return `${name} attenuates by ${loss}`;
    case "input attenuator":
      return `The input attenuator of ${name} takes ${excess}`;
    case "spare ways":
      return `${name} has ${waysWords(culprit)}, and loses ${loss}`;
    case "resistive":
      return `${name} is a resistive splitter and loses ${loss}`;
    case "splits":
    case "loses":
      return culprit.excessDb > 0.05 && culprit.amount < 0
        ? `${name} loses ${loss}, ${excess} more than it should`
        : `${name} loses ${loss}`;
    case "high tap loss":
      return `${name} sends too little to its branch, with ${loss} of loss`;
    case "low tap loss":
      return culprit.amount < -5
        ? `${name} sends too much to its branch, with only ${loss} of loss`
        : `${name} takes ${loss} off the line, which is too much`;
    case "legs swapped":
      return `${name} is wired the wrong way: the line goes on from its branch`;
    case "wrong order":
      return `The taps from ${name} on stand in the wrong order: those of least loss belong at the far end`;
    case "gets too little":
      return `Too little arrives at ${name} for everything behind it`;
    case "dead cable":
      return `The dead cable on ${name} takes ${excess}`;
    case "through at end":
      return `${name} is a loop-through outlet at the end of the line and loses ${loss}`;
    case "poor cable":
      return `${name} is poor cable and loses ${loss}`;
    case "long cable":
      return culprit.lengthM === undefined
        ? `${name} loses ${loss}`
        : `${name} is ${numeral(culprit.lengthM)} m long and loses ${loss}`;
    case "leans":
      return `${name} makes ${excess} of it`;
    case "overdriven":
      return `${name} is overdriven`;
    case "lets in":
      return `A signal from outside comes in at ${name}`;
    case "hears another":
      return `${name} also receives a distant transmitter on the same channel`;
    case "brings together":
      return `${name} brings the two signals together`;
  }
}

function level({ amount }: Blamed): string {
  return `${numeral(amount)} dBµV`;
}

function waysWords({ ways }: Blamed): string {
  if (!ways) return "more ways than are used";
  const ends = ways.side === "in" ? "inputs" : "outputs";
  return plural(ways.used, {
    zero: `${ways.of} ${ends} of which none is used`,
    one: `${ways.of} ${ends} of which one is used`,
    other: (n) => `${ways.of} ${ends} of which ${n} are used`,
  });
}

/** What is to be done about it; undefined where that depends on more than the culprit. */
export function culpritCure(culprit: Blamed | undefined): string | undefined {
  if (!culprit) return undefined;
  const name = partName(culprit.part);
  switch (culprit.does) {
    case "bad joint":
      return `Cut out ${name} and fit a new connector.`;
    case "off aim":
      return `Realign ${name} with a meter.`;
    case "turned":
      return `Turn ${name} in its clamp until a meter shows the best C/N.`;
    case "wrong polariser":
      return `Replace ${name} with an LNB for the satellite’s kind of polarisation.`;
    case "mixes polarisations":
      return `Replace ${name} with an LNB of better cross-polar isolation.`;
    case "mixes inputs":
      return `Replace ${name} with a switch of less crosstalk.`;
    case "hears neighbours":
      return `Replace ${name} with a larger dish.`;
    case "in rain":
      return undefined;
    case "turned away":
      return culprit.facesAnother
        ? `Give that transmitter an aerial of its own: ${name} faces another one.`
        : `Turn ${name} towards the transmitter.`;
    case "other polarisation":
      return `Turn the elements of ${name} to the polarisation of the transmitter.`;
    case "weak source":
      if (culprit.isDish) return `Replace ${name} with a larger dish.`;
      if (culprit.belowBestDb !== undefined)
        return `Replace ${name} with an aerial made for these channels, or point one of its own at their transmitter.`;
      return culprit.isAmplified
        ? `Realign ${name}, move it to a better place, or replace it with an aerial of more gain.`
        : `Realign ${name} or move it to a better place, or amplify right behind it.`;
    case "unclean source":
      return `Only a cleaner signal from ${name} helps: no part behind it takes noise away.`;
    case "low output":
      return `Amplify right behind ${name}.`;
    case "strong source":
      return culprit.isDish ? undefined : `Put an attenuator behind ${name}.`;
    case "uneven source":
      return `Put a channel filter behind ${name} that levels its channels.`;
    case "switched off":
      return `Switch ${name} on.`;
    case "unfed":
      return `Give ${name} its supply.`;
    case "low gain":
      return `Turn ${name} up by ${numeralAsSet(Math.max(1, Math.ceil(culprit.excessDb - 0.05)))} dB.`;
    case "little gain":
      return `Replace ${name} with an LNB of more gain.`;
    case "high gain":
      return `Turn ${name} down, or take it out.`;
    case "noisy":
      return `Put a low-noise amplifier before ${name}.`;
    case "attenuates":
      return `Remove ${name} from the line.`;
    case "input attenuator":
      return `Set the input attenuator of ${name} to 0 dB.`;
    case "spare ways":
      return `Replace ${name} with a ${Math.max(2, culprit.ways?.used ?? 2)}-way ${culprit.ways?.side === "in" ? "combiner" : "splitter"}.`;
    case "resistive":
      return `Replace ${name} with a ferrite splitter.`;
    case "high tap loss":
      return `Replace ${name} with a tap of lower branch loss.`;
    case "low tap loss":
      return `Replace ${name} with a tap of higher branch loss.`;
    case "legs swapped":
      return `Swap the two leads at the outputs of ${name}: the line goes on from the through output.`;
    case "wrong order":
      return `Sort the taps from ${name} on: most loss first, least loss last.`;
    case "gets too little":
      return `Amplify before ${name}, with enough rated output.`;
    case "dead cable":
      return `Take the dead cable off ${name}, or replace ${name} with a splitter.`;
    case "through at end":
      return `Replace ${name} with a terminated outlet.`;
    case "poor cable":
      return `Replace ${name} with good copper cable.`;
    case "long cable":
      return `Amplify before ${name}, or replace it with cable of lower loss.`;
    case "loses":
      return `Replace ${name} with a part of lower loss.`;
    case "splits":
      return `Amplify before ${name}.`;
    case "lets in":
      return `Replace the lead or connector at ${name} with a well-screened one.`;
    case "hears another":
      return `Keep the distant transmitter away from ${name}: by its direction, or by an aerial of narrower beam.`;
    case "overdriven":
      return `Turn ${name} down, or keep what is not wanted out of it with a filter.`;
    case "brings together":
      return `Replace ${name} with a filter or diplexer that keeps the two apart.`;
    case "leans":
      return undefined;
  }
}

/** "because of a cable", for people who never saw a meter; empty where the part that suffers is meant. */
export function becauseOf(facts: Pick<ToldFinding, "evaluation" | "finding">): string {
  const [culprit] = facts.finding.parts;
  return culprit === facts.finding.at.part ? "" : `, because of ${plainName(facts, culprit)}`;
}
