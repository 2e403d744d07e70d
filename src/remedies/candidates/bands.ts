/** Signals kept apart by frequency: traps, filters where they do good, diplexers for plain combiners. */
import { partsBeyond } from "../../design/lookup.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding } from "../../findings/finding.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { LOWEST_UHF_CHANNEL, uhfChannelOf } from "../../parts/tvRasters.ts";
import type { Band, Spectrum } from "../../signal/band.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { isFed, type Step, wayUp } from "../site.ts";
import { recordsAround } from "./around.ts";
import { curePlaceOf } from "./places.ts";

/** A carrier so far above the others of its source is what the trade traps; common practice, no source [dB]. */
const STANDS_OUT_DB = 10;
/** What a tuned trap takes at most without taking its neighbours; from memory [dB]. */
const DEEPEST_TRAP_DB = 30;
/** No trap is so sharp that it takes one FM station and leaves the next [MHz]; common practice, no source. */
const NARROWEST_MHZ = 1;
/** What it takes at least of an intruder that nobody wants from there [dB]. */
const AGAINST_INTRUDER_DB = 30;

type Carrier = { readonly name: string; readonly centreMHz: number; readonly widthMHz: number };

function carrierAt({ grid }: Band, i: number): Carrier {
  return {
    name: grid.plan[grid.index[i] ?? -1]?.name ?? "",
    centreMHz: grid.centre[i] ?? 0,
    widthMHz: grid.width[i] ?? 0,
  };
}

/** A trap for the one carrier that is far too strong, before the first amplifier of its way. */
export const trap: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place || finding.at.side === "too little") return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  const source = way.at(-1);
  if (source?.record.kind.trade.job !== "aerial") return [];
  const [band] = source.record.outputs[source.out]?.bands ?? [];
  const strongest = band && standingOut(band);
  if (!strongest) return [];
  const db = Math.min(DEEPEST_TRAP_DB, strongest.byDb);
  return [trapBehind(source, strongest.carrier, { mode: "lower", db })];
};

function standingOut(band: Band): { readonly carrier: Carrier; readonly byDb: number } | undefined {
  if (band.level.length < 3) return undefined;
  const order = [...band.level.keys()].sort((a, b) => (band.level[b] ?? 0) - (band.level[a] ?? 0));
  const [first = 0, second = 0] = order;
  const byDb = Math.round((band.level[first] ?? 0) - (band.level[second] ?? 0));
  const carrier = carrierAt(band, first);
  return byDb < STANDS_OUT_DB || carrier.widthMHz < NARROWEST_MHZ ? undefined : { carrier, byDb };
}

/** A trap tuned to one channel, in the line behind a source. */
function trapBehind(
  { record, out }: Step,
  carrier: Carrier,
  { mode, db }: { readonly mode: "lower" | "stop"; readonly db: number },
): Candidate {
  const { id } = record.part;
  // A channel of 8 MHz for a carrier of 7.61, and of 6 for one of 5.71.
  const half = Math.ceil(carrier.widthMHz) / 2;
  const [fromMHz, toMHz] = [Math.floor(carrier.centreMHz - half), Math.ceil(carrier.centreMHz + half)];
  const facts = { carrier: carrier.name, fromMHz, toMHz, db };
  return candidate("trap", [id, out, carrier.name], facts, (design) => {
    const d = draft(design);
    const filter = { mode, fromMHz, toMHz, rejectionDb: db, dcPass: isFed(record, out) };
    d.insert("filter", filter, [id, out]);
    return d.result();
  });
}

/** A trap for the neighbour that blocks a tuner, behind the aerial that it comes in by: down to the blocked carrier. */
export const trapNeighbour: Idea = (site, finding) => {
  if (finding.rule !== "tuner-blocked" || finding.facts.kind !== "beside") return [];
  const { by } = finding.facts;
  const record = site.evaluation.record(by.part);
  if (record?.kind.trade.job !== "aerial") return [];
  const db = Math.min(DEEPEST_TRAP_DB, Math.round(finding.value ?? 0));
  return Object.entries(record.outputs).flatMap(([out, { bands }]) =>
    bands.flatMap((band) => {
      const i = band.origin.key === by.origin ? band.grid.index.indexOf(by.index) : -1;
      const carrier = carrierAt(band, i);
      if (i < 0 || carrier.widthMHz < NARROWEST_MHZ) return [];
      return [trapBehind({ record, in: null, out }, carrier, { mode: "lower", db })];
    }),
  );
};

/** Of two sources that bring the same channel, it is trapped at the weaker one. */
export const trapIntruder: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.parts[0] ?? "");
  if (!record) return [];
  const arrivals = Object.entries(record.inputs).flatMap(([port, { bands }]) =>
    bands.filter((b) => b.selected && !b.isFloor).map((band) => ({ port, band })),
  );
  return arrivals.flatMap(({ port, band }) => {
    const others = arrivals.filter((o) => o.port !== port && o.band.origin.service === band.origin.service);
    const clashing = [...band.level.keys()].filter((i) => others.some((o) => isStronger(o.band, band, i)));
    const [only] = clashing;
    if (only === undefined || clashing.length > 1 || band.level.length < 2) return [];
    const source = wayUp(site, [record.part.id, port], band.origin.service).at(-1);
    if (source?.record.kind.trade.job !== "aerial") return [];
    return [trapBehind(source, carrierAt(band, only), { mode: "stop", db: AGAINST_INTRUDER_DB })];
  });
};

/** Whether a band has a stronger carrier where the other has its own; of two alike the later source yields. */
function isStronger(band: Band, other: Band, i: number): boolean {
  const own = carrierAt(other, i);
  return [...band.level.keys()].some((k) => {
    const there = carrierAt(band, k);
    const overlaps = Math.abs(there.centreMHz - own.centreMHz) < (there.widthMHz + own.widthMHz) / 2;
    const by = (band.level[k] ?? 0) - (other.level[i] ?? 0);
    return overlaps && (by > 0 || (by === 0 && band.origin.key < other.origin.key));
  });
}

/** A filter that stands behind the amplifier which it should guard. */
export const filterBefore: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.at.part);
  const input = curePlaceOf(site, finding)?.input;
  if (!record || input === undefined || !guards(record, finding)) return [];
  const amplifier = record.part.id;
  const behind = partsBeyond(site.design.wires, [amplifier], "downstream");
  return recordsAround(site, finding)
    .filter((r) => r.kind.trade.job === "filter" && r.kind.inline && behind.has(r.part.id))
    .map(({ part }) =>
      candidate("filter-before", [part.id, amplifier], { amplifier }, (design) => {
        const d = draft(design);
        d.move(part.id, [amplifier, input]);
        return d.result();
      }),
    );
};

function guards({ inputs }: PartRecord, { rule }: Finding): boolean {
  const isForeign = ({ bands }: Spectrum) => bands.some((b) => b.origin.service === "mobile");
  return rule === "overload" && Object.values(inputs).some(isForeign);
}

/** A channel filter for what is on air here, in the place of one for elsewhere. */
export const otherChannels: Idea = (site, finding) =>
  finding.parts.flatMap((id): readonly Candidate[] => {
    const record = site.evaluation.record(id);
    const key = record && optionMeaning(record.kind, "channel list");
    if (!record || key === undefined) return [];
    const arriving = Object.values(record.inputs)
      .flatMap(({ bands }) => bands.filter((b) => b.origin.service === "tv"))
      .flatMap((band) => [...band.grid.centre.keys()].map((i) => uhfChannelOf(carrierAt(band, i))));
    const raster = arriving[0]?.raster;
    const channels = [
      ...new Set(arriving.filter((found) => found.raster === raster).map(({ channel }) => channel)),
    ]
      .filter((channel) => channel >= LOWEST_UHF_CHANNEL)
      .sort((a, b) => a - b);
    if (raster === undefined || channels.length === 0) return [];
    const rasterKey = optionMeaning(record.kind, "channel raster");
    return [
      candidate("other-channels", [id, ...channels], { channels }, (design) => {
        const d = draft(design);
        d.set(id, {
          [key]: channels.map((channel) => ({ channel })),
          ...(rasterKey === undefined ? {} : { [rasterKey]: raster }),
        });
        return d.result();
      }),
    ];
  });
