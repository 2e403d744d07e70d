/** The taps of a riser graded at once, the highest nearest to the amplifier, which is set for them. */
import { partsBeyond } from "../../design/lookup.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { profileOf } from "../../findings/limits.ts";
import { heardAt, placesOf } from "../../findings/places.ts";
import { describedOptions, onSiteOf, optionMeaning, standardValues } from "../../parts/meanings.ts";
import { tapThroughDb } from "../../parts/splitters.ts";
import type { Service } from "../../signal/carrier.ts";
import { levelsOf, type PlaceLevel } from "../balance/aim.ts";
import { candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type Site, type Step, wayUp } from "../site.ts";
import { curePlaceOf } from "./places.ts";

/** Sockets may lie so far from the middle of their limits without another value being worth it [dB]. */
const NEAR_DB = 3;
/** Turning an amplifier further than this is another amplifier [dB]; a choice of this tool. */
const MOST_TURN_DB = 15;

/** A tap on the riser, and the sockets that hang on its branches. */
type Rung = {
  readonly record: PartRecord;
  readonly option: string;
  readonly now: number;
  readonly taps: number;
  readonly sold: readonly number[];
  readonly levelDbuv: number;
  readonly limits: { readonly minDbuv: number; readonly maxDbuv: number };
};

type Grading = { readonly gainDb: number; readonly values: readonly number[]; readonly worstDb: number };

export const gradedTaps: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place || place.service === "satellite") return [];
  const { service } = place;
  const way = wayUp(site, [place.part.part.id, place.input], service);
  const rungs = rungsOf(site, way, service);
  if (rungs.length < 2) return [];
  const amplifier = way.find((s) => s.record.kind.trade.job === "amplifier" && s.record.powered)?.record;
  const gain = amplifier && knobOf(amplifier, "gain");
  const best = bestGrading(rungs, amplifier && gain ? { amplifier, ...gain } : undefined);
  const changed = best.values.flatMap((db, i) => {
    const rung = rungs[i];
    return rung && rung.now !== db ? [{ rung, db }] : [];
  });
  if (changed.length < 2) return [];
  const taps = changed.map(({ rung, db }) => ({ part: rung.record.part.id, db }));
  const slope = amplifier && knobOf(amplifier, "slope");
  const slopeDb = slope ? slopeFor(rungs.at(-1), service, slope) : undefined;
  const facts = {
    taps,
    ...(amplifier ? { amplifier: amplifier.part.id } : {}),
    ...(gain && best.gainDb !== gain.now ? { gainDb: best.gainDb } : {}),
    ...(slopeDb !== undefined && slopeDb !== slope?.now ? { slopeDb } : {}),
  };
  const first = taps[0]?.part ?? "";
  return [
    candidate(
      "graded-taps",
      [first, ...taps.map(({ part, db }) => `${part}=${db}`), best.gainDb],
      facts,
      (design) => {
        const d = draft(design);
        for (const { rung, db } of changed) d.set(rung.record.part.id, { [rung.option]: db });
        if (amplifier && gain && facts.gainDb !== undefined)
          d.set(amplifier.part.id, { [gain.option]: best.gainDb });
        if (amplifier && slope && facts.slopeDb !== undefined)
          d.set(amplifier.part.id, { [slope.option]: facts.slopeDb });
        return d.result();
      },
    ),
  ];
};

type Knob = { readonly option: string; readonly now: number; readonly min: number; readonly max: number };

function knobOf(record: PartRecord, meaning: "gain" | "slope"): Knob | undefined {
  const option = optionMeaning(record.kind, meaning);
  const now = option === undefined ? undefined : record.options[option];
  if (option === undefined || typeof now !== "number" || onSiteOf(record.kind, option) !== "setting")
    return undefined;
  const { min = now, max = now } = describedOptions(record.kind).get(option) ?? {};
  return { option, now, min, max };
}

/** All taps of the riser that a way runs along, from its head to its end. */
function rungsOf(site: Site, way: readonly Step[], service: Service): readonly Rung[] {
  const head = [...way].reverse().find(({ record }) => isTap(record));
  if (!head) return [];
  const levels = levelsOf(site, service);
  const found: Rung[] = [];
  // No riser has more taps than there are parts; a loop would otherwise never end.
  let next: PartRecord | undefined = head.record;
  for (let guard = site.design.parts.length; next && guard > 0; guard--) {
    const rung = isTap(next) ? rungOf(site, next, levels, service) : undefined;
    if (rung) found.push(rung);
    const trunk = next.ports.find(
      (p) => p.side === "out" && (p.role === "trunk" || (p.role === "output" && next?.kind.inline)),
    );
    next = site.evaluation.record((trunk && next.joined[trunk.id]?.[0]) ?? "");
  }
  return found;
}

function isTap({ kind }: PartRecord): boolean {
  return optionMeaning(kind, "tap loss") !== undefined;
}

/** Undefined for a tap on which nobody hangs. */
function rungOf(
  site: Site,
  record: PartRecord,
  levels: readonly PlaceLevel[],
  service: Service,
): Rung | undefined {
  const option = optionMeaning(record.kind, "tap loss");
  const now = option === undefined ? undefined : record.options[option];
  if (option === undefined || typeof now !== "number") return undefined;
  const outs = record.ports.filter((p) => p.role === "tap");
  const branches = outs.flatMap((port) => record.joined[port.id]?.[0] ?? []);
  const behind = partsBeyond(site.design.wires, branches, "downstream");
  const own = levels.filter((l) => l.part === record.part.id || behind.has(l.part));
  if (own.length === 0) return undefined;
  return {
    record,
    option,
    now,
    taps: Math.max(1, outs.length),
    sold: standardValues(record.kind, option),
    levelDbuv: own.reduce((sum, l) => sum + l.meanDbuv, 0) / own.length,
    limits: limitsOf(site, own[0], service),
  };
}

/** The narrowest limits of the carriers at a place; wide open where nobody judges. */
function limitsOf(site: Site, level: PlaceLevel | undefined, service: Service): Rung["limits"] {
  const record = site.evaluation.record(level?.part ?? "");
  if (!record) return { minDbuv: 0, maxDbuv: 120 };
  const places = placesOf({
    record,
    kindAt: (port) => site.evaluation.record(record.joined[port]?.[0] ?? "")?.kind,
  });
  const heard = places.flatMap((place) => heardAt(place, service, profileOf(site.design)));
  return {
    minDbuv: Math.max(...heard.map((h) => h.limits.minDbuv)),
    maxDbuv: Math.min(...heard.map((h) => h.limits.maxDbuv)),
  };
}

/** The gain, as near to what it is as possible, with which the taps that are sold bring every socket near the middle. */
function bestGrading(
  rungs: readonly Rung[],
  gain: (Knob & { readonly amplifier: PartRecord }) | undefined,
): Grading {
  const now = gain?.now ?? 0;
  let best = graded(rungs, 0, now);
  if (!gain || best.worstDb <= NEAR_DB) return best;
  const spareDb = Math.min(...gain.amplifier.drives.map((d) => d.allowedDbuv - d.levelDbuv));
  for (let turn = 1; turn <= MOST_TURN_DB && best.worstDb > NEAR_DB; turn++)
    for (const db of [turn, -turn]) {
      if (db > spareDb || now + db > gain.max || now + db < gain.min) continue;
      const one = graded(rungs, db, now + db);
      if (one.worstDb < best.worstDb - 0.5) best = one;
    }
  return best;
}

/** Tap by tap from the head: each gets the value that brings its sockets nearest to the middle of their limits. */
function graded(rungs: readonly Rung[], moreDb: number, gainDb: number): Grading {
  let lineDb = moreDb;
  let worstDb = 0;
  const values = rungs.map(({ now, taps, sold, levelDbuv, limits }) => {
    const middle = (limits.minDbuv + limits.maxDbuv) / 2;
    const over = levelDbuv + lineDb - middle;
    // What is well placed stays: nobody changes a plate for a decibel.
    const wanted = Math.abs(over) <= NEAR_DB ? now : now + over;
    const value = sold.reduce((near, v) => (Math.abs(v - wanted) < Math.abs(near - wanted) ? v : near), now);
    worstDb = Math.max(worstDb, Math.abs(over - (value - now)));
    lineDb += tapThroughDb(now, taps) - tapThroughDb(value, taps);
    return value;
  });
  return { gainDb, values, worstDb };
}

/** Slope that makes the top channel of the last socket as strong as the lowest [dB]. */
function slopeFor(last: Rung | undefined, service: Service, { now, min, max }: Knob): number | undefined {
  if (!last) return undefined;
  const bands = Object.values(last.record.inputs).flatMap((s) =>
    s.bands.filter((b) => b.origin.service === service),
  );
  const [band] = bands;
  if (!band || band.level.length < 2) return undefined;
  const fall = (band.level[0] ?? 0) - (band.level[band.level.length - 1] ?? 0);
  // A cable falls over the whole range by more than over the few channels that are on air.
  return fall < NEAR_DB ? undefined : Math.min(max, Math.max(min, Math.round(now + fall)));
}
