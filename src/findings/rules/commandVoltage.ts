import { markCarriers, pictureOf, type Spot, spectrumAt, spotOf } from "../../sentences/explain/picture.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { partName, round1 } from "../../sentences/phrases.ts";
import type { Band } from "../../signal/band.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** Above this voltage every converter takes the request as horizontal [V]. */
const SURELY_HORIZONTAL_VOLTS = 16;

/** 18 V that arrives too low to select horizontal, and tone that does not arrive. */
export const commandVoltage: SpokenRule = {
  id: "command-lost",
  title: "A command arrives too weak",
  explain:
    "Horizontal is asked for with 18 V. On a long cable with high loop resistance (copper-clad steel) the converter's current " +
    "eats volts, and below about 15 V it takes the request as vertical. The high band is asked for with a 22 kHz tone, which needs a way through every part.",
  source: "16 to 19 V for horizontal at the converter: EN 61319-1, from memory",
  check: ({ record }) =>
    Object.values(record.switches).flatMap((s) =>
      s.offers
        .filter((o) => o.kind === "commands" && o.volts18 > 0)
        .flatMap((o) => {
          const common = {
            parts: [record.part.id, o.part],
            wires: wireAt(record, s.port),
            source: commandVoltage.source,
            port: s.port,
          };
          const drop = `Of the ${round1(o.volts18 + o.dropVolts)} V that ${partName(o.part)} gives for horizontal, ${plural(o.volts18, { one: (n) => `${n} V arrives`, other: (n) => `${n} V arrive` })} at ${partName(record.part.id)} (${round1(o.dropVolts)} V lost over ${round1(o.ohms)} Ω)`;
          const found = [];
          if (o.volts18 <= s.thresholdVolts)
            found.push({
              ...common,
              severity: "error" as const,
              message: `${drop}: horizontal cannot be selected.`,
              value: o.volts18,
              limit: SURELY_HORIZONTAL_VOLTS,
              unit: "V",
              cure: "Use copper cable of lower resistance, shorten it, or feed the converter from a unit near it.",
            });
          else if (o.volts18 < SURELY_HORIZONTAL_VOLTS)
            found.push({
              ...common,
              severity: "warning" as const,
              message: `${drop}: horizontal may fail.`,
              value: o.volts18,
              limit: SURELY_HORIZONTAL_VOLTS,
              unit: "V",
              cure: "Use copper cable of lower resistance, or shorten it.",
            });
          if (!o.toneArrives)
            found.push({
              ...common,
              severity: "error" as const,
              message: `The 22 kHz tone of ${partName(o.part)} does not reach ${partName(record.part.id)}: the high band and messages are lost.`,
              cure: "Replace the part on the way that passes direct current but no tone.",
            });
          return found;
        }),
    ),
  explanation: {
    severities: ["error", "warning"],
    customer: (facts) => {
      const may = facts.finding.severity === "error" ? "does" : "may";
      return `The request of ${plainName(facts, facts.finding.parts[1])} arrives too weak at ${plainName(facts, facts.finding.parts[0])}, which ${may === "does" ? "costs" : "may cost"} about half of the satellite channels.`;
    },
    trade: (facts) => {
      const { finding, record } = facts;
      const state = record?.switches[finding.at.port ?? ""];
      const offer = state?.offers.find((o) => o.part === finding.parts[1]);
      const name = partName(finding.parts[0] ?? "");
      if (finding.value === undefined)
        return (
          `The high band and all messages ride on a tone of 22 kHz (0.6 V peak to peak). Between ${partName(finding.parts[1] ?? "")} and ${name} lies a part that passes direct current ` +
          "but not the tone, so only the low band can be selected: oscillator 9 750 MHz instead of 10 600 MHz, half of the transponders."
        );
      return (
        `Of 18 V, ${plural(finding.value, { one: (n) => `${n} V arrives`, other: (n) => `${n} V arrive` })} at ${name}; at least ${finding.limit ?? SURELY_HORIZONTAL_VOLTS} V are safe, and below its threshold of ${round1(state?.thresholdVolts ?? 0)} V it takes the request as ` +
        `vertical. ${round1(offer?.ohms ?? 0)} Ω of loop resistance take ${round1(offer?.dropVolts ?? 0)} V: a loop of 1.0 mm copper has about 36 Ω a kilometre, one of copper-clad steel about 130 Ω.`
      );
    },
    measure: ({ finding }) =>
      finding.value === undefined
        ? `Meter with tone detection on the cable at ${partName(finding.parts[0] ?? "")} while ${partName(finding.parts[1] ?? "")} is tuned to a high-band transponder: no 22 kHz there, but 22 kHz at the receiver's own plug. ` +
          "Going up part by part, the first one behind which it is missing is the culprit."
        : `Tune ${partName(finding.parts[1] ?? "")} to a horizontal transponder and measure with a voltmeter on the cable at ${partName(finding.parts[0] ?? "")}, with the load on: about ${round1(finding.value)} V prove it. ` +
          "At the receiver's own plug it must still be 17 to 19 V; the difference is the drop of the way.",
    neighbours: ["no-supply", "supply-overloaded", "receiver-misses", "plane-missing"],
    picture: (facts) => {
      const byTone = facts.finding.value === undefined;
      const lost = (spot: Spot) =>
        pictureOf(
          facts,
          spot,
          markCarriers(
            spectrumAt(facts, spot),
            (band, i) => (byTone ? isHighBand(band, i) : band.origin.polarisation === "H"),
            { kind: "lost", label: byTone ? "needs the tone" : "needs 18 V" },
          ),
        );
      // A converter that gets too little to run shows nothing: then the sky before it is shown.
      const input = facts.record?.ports.find((p) => p.side === "in")?.id;
      const [behind, before] = [spotOf(facts), spotOf(facts, input)];
      return (behind && lost(behind)) ?? (before && lost(before));
    },
  },
};

/** In the half of the sky band that the tone asks for: from 11.7 GHz up. */
function isHighBand(band: Band, i: number): boolean {
  return band.half === "high" || (band.shifts.length === 0 && (band.grid.centre[i] ?? 0) >= 11_700);
}
