/** Ingress: what gets onto a cable through an aerial, a poor screen or a loose connector. */
import { z } from "zod";
import { REFERENCE_KELVIN } from "../rf/noise.ts";
import type { Band, Grid } from "../signal/band.ts";
import type { Carrier, Service } from "../signal/carrier.ts";
import { makeGrid } from "../signal/grid.ts";
import { flat } from "../signal/response.ts";
import { sourceBand } from "../signal/treat.ts";
import { plural } from "../words/plural.ts";
import { define } from "./contract.ts";
import { number, toggle } from "./fields.ts";
import type { OptionTrade } from "./optionTrade.ts";
import { INLINE, LINE_POWER, THROUGH_PORTS, throughPath } from "./passive.ts";
import { CORDLESS, HANDSET_700, HANDSET_800, MAST_700, MAST_800, MAST_1800 } from "./planUnwanted.ts";

const LEVEL_SOURCE = "order of magnitude, from memory; measure yours";

function levelField(
  o: { readonly label: string; readonly help: string } & Pick<OptionTrade, "onlyWhen">,
  value: number,
) {
  return number({
    ...o,
    unit: "dBµV",
    min: 0,
    max: 120,
    step: 1,
    default: value,
    source: LEVEL_SOURCE,
    means: "source level",
    onSite: "not ours",
    spreadDb: 10,
  });
}

const OPTIONS = z.object({
  mast700: toggle({
    label: "Masts, 700 MHz band",
    help: "758 to 788 MHz.",
    default: true,
    means: "mast signal",
    onSite: "not ours",
  }),
  mast800: toggle({
    label: "Masts, 800 MHz band",
    help: "791 to 821 MHz.",
    default: true,
    means: "mast signal",
    onSite: "not ours",
  }),
  mast1800: toggle({
    label: "Masts, 1800 MHz band",
    help: "1805 to 1875 MHz: inside the satellite IF.",
    default: false,
    means: "mast signal",
    onSite: "not ours",
  }),
  mastDbuv: levelField({ label: "Level from masts", help: "Of each 10 MHz carrier, on this wire." }, 65),
  handset700: toggle({
    label: "Handsets, 700 MHz band",
    help: "703 to 733 MHz.",
    default: false,
    onSite: "not ours",
  }),
  handset800: toggle({
    label: "Handsets, 800 MHz band",
    help: "832 to 862 MHz.",
    default: false,
    onSite: "not ours",
  }),
  handsetDbuv: levelField(
    { label: "Level from handsets", help: "A phone in the room next to a poor lead." },
    60,
  ),
  cordless: toggle({
    label: "Cordless phones (DECT)",
    help: "1880 to 1900 MHz: inside the satellite IF.",
    default: false,
    onSite: "not ours",
  }),
  cordlessDbuv: levelField(
    {
      label: "Level from cordless phones",
      help: "Of each carrier, on this wire.",
      onlyWhen: { cordless: true },
    },
    50,
  ),
});

type PickUpOptions = z.output<typeof OPTIONS>;

type Group = {
  readonly key: "mast700" | "mast800" | "mast1800" | "handset700" | "handset800" | "cordless";
  readonly service: Service;
  readonly level: "mastDbuv" | "handsetDbuv" | "cordlessDbuv";
  readonly grid: Grid;
};

const group = (
  key: Group["key"],
  service: Service,
  level: Group["level"],
  plan: readonly Carrier[],
): Group => ({ key, service, level, grid: makeGrid(plan) });

const GROUPS: readonly Group[] = [
  group("mast700", "mobile", "mastDbuv", MAST_700),
  group("mast800", "mobile", "mastDbuv", MAST_800),
  group("mast1800", "mobile", "mastDbuv", MAST_1800),
  group("handset700", "mobile", "handsetDbuv", HANDSET_700),
  group("handset800", "mobile", "handsetDbuv", HANDSET_800),
  group("cordless", "cordless", "cordlessDbuv", CORDLESS),
];

function unwantedBands(o: PickUpOptions, id: string): readonly Band[] {
  return GROUPS.filter(({ key }) => o[key]).map(({ key, service, level, grid }) =>
    sourceBand({
      origin: { key: `${id}/${key}`, service, part: id },
      grid,
      levelDbuv: () => o[level],
      // Noise counts per carrier, so these carriers need their own: that of any matched wire.
      noiseKelvin: REFERENCE_KELVIN,
    }),
  );
}

export const PICK_UP = define({
  kind: "pick-up",
  family: "receive",
  name: "Ingress",
  firstName: "Unwanted pick-up",
  summary: "Puts mobile and cordless phone signals onto a wire, to see what they disturb.",
  keywords: ["pick-up", "unwanted", "interference", "LTE", "5G", "mobile", "DECT", "phone", "screening"],
  prefix: "pickup",
  trade: { job: "unwanted signal", price: 0, workMinutes: 0, inItsPlace: "screened lead" },
  options: OPTIONS,
  symbol: "pick-up",
  caption: (o) => {
    const on = GROUPS.filter(({ key }) => o[key]).length;
    return plural(on, {
      zero: "nothing on air",
      one: (n) => `${n} kind of signal`,
      other: (n) => `${n} kinds of signal`,
    });
  },
  ports: () => THROUGH_PORTS,
  signal: (o, { id }) => ({
    emits: [{ port: "out", bands: unwantedBands(o, id) }],
    paths: throughPath(flat(0)),
  }),
  power: () => ({ paths: [LINE_POWER] }),
  inline: INLINE,
});
