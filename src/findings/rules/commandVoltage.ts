import { type Rule, wireAt } from "../rule.ts";
import { partName, round1 } from "../words.ts";

/** Above this voltage every converter takes the request as horizontal [V]. */
const SURELY_HORIZONTAL_VOLTS = 16;

/** 18 V that arrives too low to select horizontal, and tone that does not arrive. */
export const commandVoltage: Rule = {
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
          };
          const drop = `Of the ${round1(o.volts18 + o.dropVolts)} V that ${partName(o.part)} gives for horizontal, ${round1(o.volts18)} V arrive at ${partName(record.part.id)} (${round1(o.dropVolts)} V lost over ${round1(o.ohms)} Ω)`;
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
};
