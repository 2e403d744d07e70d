/** An aerial that hears too little of its own transmitters, or too much of another: turned to where that is best. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { AnyOptions } from "../../parts/contract.ts";
import { describedOptions, doesCount, optionMeaning } from "../../parts/meanings.ts";
import { AS_LISTED, OWN_BEAM } from "../../parts/transmitters.ts";
import type { Band } from "../../signal/band.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import type { CureStepOf } from "../cureStep.ts";
import { draft } from "../draft.ts";
import { recordsAround } from "./around.ts";

/** Steps in which bearings are tried [°]; nobody turns an aerial finer by eye. */
const STEP_DEG = 5;
/** Level above which more does not help, and C/I above what is needed beyond which neither does [dBµV, dB]. */
const ENOUGH_DBUV = 60;
const ENOUGH_DB = 20;
/** Bearings that differ by less are as good as each other [dB]. */
const ALIKE_DB = 0.1;
/** A long aerial, as sold for places between two transmitters; typical, from memory. */
const NARROW = { beamWidthDeg: 25, frontToBackDb: 28 } as const;

/** A long aerial in the place of one that hears too much from beside its direction. */
export const narrowAerial: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record): readonly Candidate[] => {
    const { kind, options, part } = record;
    const [aim, pattern, width, back] = (["aim", "pattern", "beam width", "front to back"] as const).map(
      (meaning) => optionMeaning(kind, meaning),
    );
    if (aim === undefined || pattern === undefined || width === undefined || back === undefined) return [];
    const isNarrow = options[pattern] === OWN_BEAM && Number(options[width]) <= NARROW.beamWidthDeg;
    if (options[aim] === AS_LISTED || isNarrow) return [];
    const { beamWidthDeg, frontToBackDb } = NARROW;
    return [
      candidate("narrow-aerial", [part.id], { beamWidthDeg }, (design) => {
        const d = draft(design);
        d.set(part.id, { [pattern]: OWN_BEAM, [width]: beamWidthDeg, [back]: frontToBackDb });
        return d.result();
      }),
    ];
  });

/** Where the worst off of its wanted carriers is best, by level and against what shares its channel. */
export const turnAerial: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record): readonly Candidate[] => {
    if (record.kind.trade.job !== "aerial") return [];
    const [bearing, elements] = (["bearing", "polarisation"] as const).map((meaning) =>
      settable(record, meaning),
    );
    const found: Candidate[] = [];
    if (bearing !== undefined) {
      const to = bestBearing(record, bearing);
      if (to !== record.options[bearing])
        found.push(turned("turn-aerial", record, { option: bearing, from: record.options[bearing], to }));
    }
    if (elements !== undefined) {
      const from = record.options[elements];
      found.push(turned("turn-elements", record, { option: elements, from, to: from === "V" ? "H" : "V" }));
    }
    return found;
  });

function settable({ kind, options }: PartRecord, meaning: "bearing" | "polarisation"): string | undefined {
  const key = optionMeaning(kind, meaning);
  const meta = key === undefined ? undefined : describedOptions(kind).get(key);
  return meta && doesCount(meta, options) ? key : undefined;
}

type Facts = CureStepOf<"turn-aerial">["facts"];

function turned(idea: "turn-aerial" | "turn-elements", record: PartRecord, facts: Facts): Candidate {
  const { id } = record.part;
  return candidate(idea, [id, String(facts.to)], facts, (design) => {
    const d = draft(design);
    d.set(id, { [facts.option]: facts.to });
    return d.result();
  });
}

/** The middle of the widest stretch of bearings that are as good as the best; the present one if none is better. */
function bestBearing(record: PartRecord, key: string): number {
  const count = 360 / STEP_DEG;
  const scores = Array.from({ length: count }, (_, n) =>
    scoreAt(record, { ...record.options, [key]: n * STEP_DEG }),
  );
  const best = Math.max(...scores);
  // By a hair better is no reason to climb onto a roof.
  if (scoreAt(record, record.options) > best - ALIKE_DB) return Number(record.options[key]);
  const isBest = (n: number) => (scores[(n + count) % count] ?? 0) > best - ALIKE_DB;
  let widest = { from: 0, steps: 0 };
  for (let from = 0; from < count; from++) {
    if (!isBest(from) || isBest(from - 1)) continue;
    let steps = 1;
    while (steps < count && isBest(from + steps)) steps++;
    if (steps > widest.steps) widest = { from, steps };
  }
  return ((widest.from + Math.floor((widest.steps - 1) / 2)) % count) * STEP_DEG;
}

/** How the worst off of the wanted carriers stands, as the aerial puts them out [dB]. */
function scoreAt({ kind, part }: PartRecord, options: AnyOptions): number {
  const { emits = [] } = kind.signal(options, { id: part.id, powered: true });
  const bands = emits.flatMap((e) => e.bands);
  let worst = Number.POSITIVE_INFINITY;
  for (const band of bands) {
    if (band.origin.service === "distant") continue;
    for (let i = 0; i < band.level.length; i++) {
      const level = band.level[i] ?? 0;
      const spareDb = level - strongestBeside(bands, band, i) - (band.grid.required[i] ?? 0);
      worst = Math.min(worst, Math.min(0, level - ENOUGH_DBUV) + Math.min(ENOUGH_DB, spareDb));
    }
  }
  return worst;
}

/** Level of the strongest other signal within a carrier's channel [dBµV]. */
function strongestBeside(bands: readonly Band[], own: Band, i: number): number {
  const [centre, half] = [own.grid.centre[i] ?? 0, (own.grid.width[i] ?? 0) / 2];
  let strongest = Number.NEGATIVE_INFINITY;
  for (const other of bands) {
    if (other === own) continue;
    for (let j = 0; j < other.level.length; j++)
      if (Math.abs((other.grid.centre[j] ?? 0) - centre) < half)
        strongest = Math.max(strongest, other.level[j] ?? 0);
  }
  return strongest;
}
