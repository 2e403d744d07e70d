/** What a TV set has beside its first tuner: newer and other systems, and 5 V for an active aerial. */
import { aerialSupplyChoice } from "./amplifierFields.ts";
import type { AnyOptions, PartKind, ReceiverInput } from "./contract.ts";
import { toggle } from "./fields.ts";

/** What a cable tuner reaches down to [MHz]: cable networks begin at about 110 MHz, from memory. */
export const CABLE_FROM_MHZ = 110;

/** Volts and milliamperes that TV sets and boxes give an active aerial; usual values, from memory. */
const AERIAL_VOLTS = 5;
const AERIAL_LIMIT_MA = 50;

const FIELDS = {
  cableTuner: toggle({
    label: "Receives cable TV",
    help: "Has a DVB-C tuner as well; most TV sets do, many boxes for terrestrial TV do not.",
    default: true,
    source: "usual, from memory",
    means: "cable tuner",
    onSite: "factory",
  }),
  secondGeneration: toggle({
    label: "Receives DVB-T2",
    help: "Sets from before the change to DVB-T2, about 2010 to 2016 by country, receive DVB-T only.",
    default: true,
    source: "usual, from memory",
    onSite: "factory",
    advanced: true,
  }),
  aerialSupply: aerialSupplyChoice(["5"], {
    label: "Feeds an active aerial",
    help: "A setting of its menu, off as it comes.",
  }),
};

/** The same receiver as a TV set. */
export function asTelevision(kind: PartKind): PartKind {
  return {
    ...kind,
    options: kind.options.extend(FIELDS),
    reception: (o) => {
      const { inputs = [], wants = [] } = kind.reception?.(o) ?? {};
      return { wants, inputs: inputs.map((input) => withSystems(input, o)) };
    },
    power: (o) =>
      o.aerialSupply === "5"
        ? {
            supplies: [
              {
                port: "in",
                kind: "plain",
                volts13: AERIAL_VOLTS,
                volts18: AERIAL_VOLTS,
                limitMa: AERIAL_LIMIT_MA,
              },
            ],
          }
        : {},
  };
}

function withSystems(input: ReceiverInput, { cableTuner, secondGeneration }: AnyOptions): ReceiverInput {
  const { tunesFromMHz, tunesToMHz } = input;
  const range = { fromMHz: Math.min(CABLE_FROM_MHZ, tunesFromMHz), toMHz: tunesToMHz };
  return {
    ...input,
    systems: [
      { modes: "dvbc-", range: cableTuner === true ? range : undefined },
      ...(secondGeneration === true ? [] : [{ modes: "dvbt2-", range: undefined }]),
    ],
  };
}
