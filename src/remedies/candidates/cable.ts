/** Cables and joints on the way: another grade, a joint made anew. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { GRADES, type GradeKey, NEW_RUN_GRADES } from "../../parts/cable.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { lengthM, type Site, type Step, wayUp } from "../site.ts";
import { curePlaceOf } from "./places.ts";

/** The way that a finding is about: from its receiver or socket, or from whoever speaks to its converter. */
export function wayOf(site: Site, parts: readonly string[]): readonly Step[] {
  const steps = new Map<string, Step>();
  for (const id of parts) {
    const record = site.evaluation.record(id);
    for (const input of record?.kind.reception?.(record.options).inputs ?? [])
      for (const step of wayUp(site, [id, input.port], input.services[0] ?? "satellite"))
        if (!steps.has(step.record.part.id)) steps.set(step.record.part.id, step);
  }
  return [...steps.values()];
}

/** Cable of lower loss and resistance: one run, or all poor runs on the way. */
export const cableGrade: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const own = wayOf(site, finding.parts);
  const way = own.length > 0 || !place ? own : wayUp(site, [place.part.part.id, place.input], place.service);
  const cables = way.filter(({ record }) => record.kind.trade.job === "cable");
  return NEW_RUN_GRADES.flatMap((grade) => {
    const poorer = worthwhile(cables.filter(({ record }) => isPoorer(record, grade)));
    const ids = poorer.map(({ record }) => record.part.id);
    const each = poorer.length > 1 ? ids.map((id) => [id]) : [];
    return [...each, ids].filter((some) => some.length > 0).map((some) => regraded(some, grade));
  });
};

/** Of the longest run at least so much, to be worth pulling anew with it; a choice of this tool. */
const LEAST_SHARE = 1 / 3;

function worthwhile(cables: readonly Step[]): readonly Step[] {
  const longest = Math.max(...cables.map((step) => lengthM([step])));
  return cables.filter((step) => lengthM([step]) >= longest * LEAST_SHARE);
}

/** Whether another grade loses less of the signal, or of the volts. */
export function isPoorer({ kind, options }: PartRecord, than: GradeKey): boolean {
  const grade = options[optionMeaning(kind, "grade") ?? ""];
  const now = Object.entries(GRADES).find(([key]) => key === grade)?.[1];
  const next = GRADES[than];
  return now !== undefined && (now.loopOhmPerKm > next.loopOhmPerKm || now.k1 > next.k1) && now !== next;
}

/** All of these cables of another grade. */
export function regraded(ids: readonly string[], grade: GradeKey): Candidate {
  return candidate("cable-grade", [ids.join("+"), grade], { cables: ids, grade }, (design) => {
    const d = draft(design);
    for (const id of ids) {
      const kind = kindOf(d.part(id)?.kind ?? "");
      d.set(id, { [(kind && optionMeaning(kind, "grade")) ?? ""]: grade });
    }
    return d.result();
  });
}

/** A bad joint cut out and made anew. */
export function madeAnew(id: string): Candidate {
  return candidate("sound-joint", [id], {}, (design) => {
    const d = draft(design);
    d.remove(id);
    return d.result();
  });
}
