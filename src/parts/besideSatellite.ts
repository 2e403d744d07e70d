/** The terrestrial way through a multiswitch or stacking converter, beside the satellite inputs. */
import type { z } from "zod";
import { curve, flat, passBand, type Response } from "../signal/response.ts";
import type { Path, Port } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";

/** What the terrestrial input passes [MHz]: everything that broadcast has used from band I to UHF. */
const TERRESTRIAL = { fromMHz: 47, toMHz: 862 };

/** How well the terrestrial and the satellite side are kept apart at an output [dB]; typical, from memory. */
export const SIDE_REJECTION_DB = 30;

/** What an amplifier without supply lets through [dB]; order of magnitude, from memory. */
const UNPOWERED_DB = -25;

export function terrestrialFields() {
  return {
    terrestrial: toggle({
      label: "Terrestrial input",
      help: "Puts TV, DAB and FM (47–862 MHz) onto every output beside the satellite signal.",
      default: true,
    }),
    terrestrialBuild: choice({
      label: "Terrestrial path",
      choices: [
        { value: "passive", label: "Passive (loss)" },
        { value: "active", label: "Active (amplifier)" },
      ],
      default: "passive",
    }),
    terrestrialLossDb: number({
      label: "Terrestrial loss",
      unit: "dB",
      help: "To each output at the upper end, when passive; about 2 dB less at the lower end.",
      min: 0,
      max: 40,
      step: 0.5,
      default: 15,
      source: "typical (10 to 20), from memory",
      onlyWhen: { terrestrial: true, terrestrialBuild: "passive" },
      spreadDb: 2,
    }),
    terrestrialGainDb: number({
      label: "Terrestrial gain",
      unit: "dB",
      help: "To each output, when active.",
      min: -10,
      max: 30,
      step: 0.5,
      default: 2,
      source: "typical (0 to 5), from memory",
      means: "terrestrial gain",
      onSite: "setting",
      turnsBy: 1,
      onlyWhen: { terrestrial: true, terrestrialBuild: "active" },
      spreadDb: 1.5,
    }),
    terrestrialNoiseDb: number({
      label: "Terrestrial noise figure",
      unit: "dB",
      help: "When active.",
      min: 1,
      max: 15,
      step: 0.5,
      default: 6,
      source: "typical (5 to 8), from memory",
      onlyWhen: { terrestrial: true, terrestrialBuild: "active" },
      spreadDb: 1,
      advanced: true,
    }),
    terrestrialRatedDbuv: number({
      label: "Terrestrial rated output",
      unit: "dBµV",
      help: "When active: per carrier, with two carriers and 60 dB to their third-order products.",
      min: 70,
      max: 120,
      step: 1,
      default: 90,
      source: "typical (85 to 95), from memory",
      onlyWhen: { terrestrial: true, terrestrialBuild: "active" },
      spreadDb: 2,
      advanced: true,
    }),
  };
}

export type TerrestrialOptions = z.output<z.ZodObject<ReturnType<typeof terrestrialFields>>>;

export const TERRESTRIAL_INPUT: Port = {
  id: "ter",
  side: "in",
  medium: "coax",
  label: "TV",
  role: "terrestrial",
};

/** The terrestrial paths from "ter" to every output; none without that input. */
export function terrestrialPaths(
  o: TerrestrialOptions,
  outputs: readonly string[],
  powered: boolean,
): readonly Path[] {
  if (!o.terrestrial) return [];
  const passes = (gain: Response) => passBand({ ...TERRESTRIAL, gain, rejectionDb: SIDE_REJECTION_DB });
  const rest = restOfPath(o, powered, passes);
  return outputs.map((to) => ({ from: TERRESTRIAL_INPUT.id, to, ...rest }));
}

function restOfPath(
  o: TerrestrialOptions,
  powered: boolean,
  passes: (gain: Response) => Response,
): Pick<Path, "response" | "noiseFigureDb" | "rating"> {
  if (o.terrestrialBuild === "passive") {
    const loss = o.terrestrialLossDb;
    return { response: passes(curve([47, -Math.max(0, loss - 2)], [862, -loss])) };
  }
  if (!powered) return { response: passes(flat(UNPOWERED_DB)) };
  return {
    response: passes(flat(o.terrestrialGainDb)),
    noiseFigureDb: o.terrestrialNoiseDb,
    rating: { outputDbuv: o.terrestrialRatedDbuv, ratioDb: 60 },
  };
}
