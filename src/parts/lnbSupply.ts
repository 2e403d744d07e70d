/** How a multiswitch or stacking converter with its own mains unit feeds the LNB on its inputs. */
import type { z } from "zod";
import { aerialSupplyFields } from "./amplifierFields.ts";
import { TERRESTRIAL_INPUT } from "./besideSatellite.ts";
import type { Port, Supply } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import type { OptionTrade } from "./optionTrade.ts";
import { MEMORY } from "./passive.ts";

/** `onlyWhen`: what else must be so for the unit to feed the LNB itself. */
export function lnbSupplyFields(onlyWhen: OptionTrade["onlyWhen"] = {}) {
  return {
    mainsOn: toggle({
      label: "Mains on",
      help: "Switch it off to see what is left when its mains unit fails.",
      default: true,
      means: "mains",
      onSite: "setting",
      soundValue: true,
    }),
    feedsLnb: toggle({
      label: "Feeds the LNB",
      help: "Puts supply onto the satellite inputs. In a cascade only one unit should.",
      default: true,
      means: "converter feed",
      onSite: "setting",
    }),
    lnbLimitMa: number({
      label: "Current limit for the LNB",
      help: "For all inputs of one satellite together.",
      unit: "mA",
      min: 50,
      max: 3000,
      step: 50,
      default: 500,
      source: "order of magnitude, from memory; see the unit’s plate",
      means: "supply limit",
      onlyWhen: { feedsLnb: true, ...onlyWhen },
    }),
  };
}

/** Field of units that sleep; `onlyWhen`: what else must be so for the unit to feed anything. */
export function energySavingField(onlyWhen: OptionTrade["onlyWhen"] = {}) {
  return toggle({
    label: "Energy-saving",
    help: "Feeds the LNB and any masthead amplifier only while a receiver on its outputs gives 13 or 18 V. TV and radio still pass.",
    default: false,
    source: "sold as standby or energy-saving types; common practice, no source",
    onlyWhen,
  });
}

/** How such a unit feeds a masthead amplifier through its terrestrial input. */
export function terrestrialSupplyFields(onlyWhen: OptionTrade["onlyWhen"] = {}) {
  return aerialSupplyFields({
    label: "Feeds a masthead amplifier",
    help: "Through its terrestrial input.",
    onlyWhen: { terrestrial: true, ...onlyWhen },
  });
}

/** Inputs of one satellite lead to one LNB: "hl2" belongs to the second. */
function lnbOf(port: string): string {
  return port.replace(/^\D+/, "") || "1";
}

type SupplyOptions = z.output<z.ZodObject<ReturnType<typeof lnbSupplyFields>>>;

/**
 * Fixed supplies on satellite inputs: 18 V on those for horizontal, 13 V elsewhere (common practice, no source).
 * No commands, for a quattro or wideband LNB heeds none; a unit that `asks` also sends 22 kHz on those for the high
 * band, so that a quad LNB gives each of them its quadrant. `whileFedAt`: outputs that wake a unit which saves energy.
 */
export function lnbSupplies(
  o: SupplyOptions,
  inputs: readonly Port[],
  { asks = false, whileFedAt }: { readonly asks?: boolean } & Pick<Supply, "whileFedAt"> = {},
): readonly Supply[] {
  if (!o.mainsOn || !o.feedsLnb) return [];
  return inputs.map(({ id: port, plane }): Supply => {
    const { polarisation = "V", half = "low" } = plane ?? {};
    const volts = polarisation === "H" ? 18 : 13;
    const fixed = {
      port,
      volts13: volts,
      volts18: volts,
      limitMa: o.lnbLimitMa,
      shares: lnbOf(port),
      ...(whileFedAt ? { whileFedAt } : {}),
    };
    return asks
      ? { ...fixed, kind: "commands", request: { polarisation, half } }
      : { ...fixed, kind: "plain" };
  });
}

/** How a unit with mains feeds those on the trunks below it. */
export function trunkSupplyFields(onlyWhen: OptionTrade["onlyWhen"] = {}) {
  return {
    trunkSupply: choice({
      label: "Feeds the trunks",
      help: "Units of the cascade below, over the satellite trunks.",
      choices: [
        { value: "0", label: "No" },
        { value: "12", label: "With 12 V" },
        { value: "15", label: "With 15 V" },
        { value: "18", label: "With 18 V" },
      ],
      default: "0",
      source: MEMORY,
      onSite: "setting",
      onlyWhen,
    }),
    trunkLimitMa: number({
      label: "Limit of that supply",
      help: "For all trunks together.",
      unit: "mA",
      min: 50,
      max: 5000,
      step: 50,
      default: 1000,
      source: "order of magnitude, from memory; see the unit’s plate",
      advanced: true,
      means: "supply limit",
      onlyWhen: { ...onlyWhen, trunkSupply: ["12", "15", "18"] },
    }),
  };
}

/** What it puts onto these trunks. */
export function trunkSupplies(
  o: { readonly mainsOn: boolean; readonly trunkSupply: string; readonly trunkLimitMa: number },
  trunks: readonly string[],
): readonly Supply[] {
  const volts = Number(o.trunkSupply);
  if (!o.mainsOn || volts === 0) return [];
  return trunks.map((port) => ({
    port,
    down: true,
    kind: "plain",
    volts13: volts,
    volts18: volts,
    limitMa: o.trunkLimitMa,
    shares: "trunks",
  }));
}

/** What such a unit puts onto its terrestrial input. */
export function terrestrialSupplies(
  o: {
    readonly mainsOn: boolean;
    readonly terrestrial: boolean;
    readonly aerialSupply: string;
    readonly aerialLimitMa: number;
  },
  wakes: Pick<Supply, "whileFedAt">,
): readonly Supply[] {
  const volts = Number(o.aerialSupply);
  if (!o.mainsOn || !o.terrestrial || volts === 0) return [];
  const fixed = { volts13: volts, volts18: volts, limitMa: o.aerialLimitMa };
  return [{ port: TERRESTRIAL_INPUT.id, kind: "plain", ...fixed, ...wakes }];
}
