/** The test meter, which can be hung on any wire. */
import { z } from "zod";
import { flat } from "../signal/response.ts";
import { define, type PartKind } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import { INLINE, LINE_POWER, THROUGH_PORTS, throughPath } from "./passive.ts";

const meter = define({
  kind: "meter",
  family: "use",
  name: "Test meter",
  summary: "Shows what is on a wire without changing it; can feed an LNB while no receiver does.",
  keywords: ["measure", "analyser", "level meter", "probe"],
  prefix: "meter",
  trade: { job: "meter", price: 0, workMinutes: 0, inItsPlace: "coupler" },
  options: z.object({
    supply: choice({
      label: "Feeds the line with",
      choices: [
        { value: "none", label: "Nothing" },
        { value: "13", label: "13 V (vertical)" },
        { value: "18", label: "18 V (horizontal)" },
      ],
      default: "none",
      onSite: "setting",
    }),
    tone: toggle({ label: "22 kHz tone (high band)", default: false, onSite: "setting" }),
    limitMa: number({
      label: "Limit of its supply",
      unit: "mA",
      min: 50,
      max: 1000,
      default: 400,
      source: "typical, from memory",
      advanced: true,
      means: "supply limit",
      onlyWhen: { supply: ["13", "18"] },
    }),
  }),
  symbol: "meter",
  caption: (o) => (o.supply === "none" ? "only measures" : `feeds ${o.supply} V${o.tone ? " + 22 kHz" : ""}`),
  ports: () => THROUGH_PORTS,
  signal: () => ({ paths: throughPath(flat(0)) }),
  power: (o) => {
    if (o.supply === "none") return { paths: [LINE_POWER] };
    return {
      paths: [LINE_POWER],
      supplies: [
        {
          port: "in",
          kind: "commands",
          volts13: 13,
          volts18: 18,
          limitMa: o.limitMa,
          request: { polarisation: o.supply === "13" ? "V" : "H", half: o.tone ? "high" : "low" },
        },
      ],
    };
  },
  inline: INLINE,
});

export const METERS: readonly PartKind[] = [meter];
