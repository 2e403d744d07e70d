/** The way back: a fault is put into a sound design, and the cures that are proposed for it are judged. */
import type { Design, PartId } from "../../src/design/design.ts";
import { partById } from "../../src/design/lookup.ts";
import type { Verdict } from "../../src/findings/finding.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { kindOf } from "../../src/parts/catalogue.ts";
import { difference } from "../../src/remedies/difference.ts";
import type { Fault } from "../../src/remedies/faults/fault.ts";
import { faults } from "../../src/remedies/faults/list.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { type Site, siteOf } from "../../src/remedies/site.ts";

export type Outcome = {
  readonly design: string;
  readonly fault: Fault;
  /** Place among the proposals of the first that restores everybody at the faulty part; undefined: none does. */
  readonly rank: number | undefined;
  readonly proposals: readonly Proposal[];
};

/** So many causes, and so many cures, are looked at before somebody gives up. */
const FIRST = { causes: 2, cures: 3 } as const;

export function isCured({ rank }: Outcome): boolean {
  return rank !== undefined && rank < FIRST.cures;
}

/** Every fault of a design that makes a receiver fail or brings a new error or warning. */
export function noticed(sound: Site): readonly { readonly fault: Fault; readonly site: Site }[] {
  return faults(sound.design).flatMap((fault) => {
    const design = fault.apply(sound.design);
    if (design === sound.design) return [];
    const site = siteOf(design, sound.evaluation);
    return isWorse(sound, site) ? [{ fault, site }] : [];
  });
}

function isWorse(sound: Site, site: Site): boolean {
  const known = new Set(sound.report.findings.map((f) => f.id));
  const came = site.report.findings.some((f) => f.severity !== "note" && !known.has(f.id));
  // A receiver that is off, or that nothing is plugged into, is no complaint of its own.
  const failed = (v: Verdict) =>
    v.role === "receiver" && v.state === "fails" && v.idle === undefined && worked.has(v.part);
  const worked = new Set(sound.report.verdicts.filter((v) => v.state !== "fails").map((v) => v.part));
  return came || site.report.verdicts.some(failed);
}

/** Whether every receiver of a design works, so that what a fault takes from them is seen. */
export function isSound({ report }: Site): boolean {
  return report.verdicts.every((v) => v.role !== "receiver" || v.idle !== undefined || v.state !== "fails");
}

/** Whether one of the first causes that came with a fault names a part that the fault is at. */
export function isNamed(sound: Site, fault: Fault, faulty: Site): boolean {
  const known = new Set(sound.report.findings.map((f) => f.id));
  const parts = concerned(sound.design, faulty, fault);
  return faulty.report.causes
    .filter(({ root }) => !known.has(root.id))
    .slice(0, FIRST.causes)
    .some(({ root }) => parts.has(root.parts[0]));
}

/** What the search proposes for a fault, and which of it puts the sound state back where the fault is. */
export function cureOf(name: string, sound: Site, fault: Fault, faulty: Site): Outcome {
  let proposals: readonly Proposal[] = [];
  for (const progress of search(faulty.design, { prices: PLACEHOLDER_PRICES }))
    proposals = progress.proposals;
  const rank = proposals.findIndex(
    (p) =>
      touches(p.design, faulty.design, concerned(sound.design, faulty, fault)) &&
      isRestored(sound, siteOf(p.design, faulty.evaluation)),
  );
  return { design: name, fault, rank: rank < 0 ? undefined : rank, proposals };
}

/** Parts at which the fault is found, and those that it put in. */
function concerned(sound: Design, { design, report }: Site, fault: Fault): ReadonlySet<PartId> {
  const { added, removed, wiresRemoved } = difference(sound, design);
  const parts = new Set([...fault.parts, ...[...added, ...removed].map((p) => p.id)]);
  // What has lost its lead, or stands where something is gone, can be joined or closed again.
  if (added.length === 0)
    for (const { from, to } of wiresRemoved) for (const [id] of [from, to]) parts.add(id);
  // Two leads that are swapped at one end can be swapped back at the other: along their cables it is the same.
  if (fault.type === "swapped")
    for (const id of parts)
      for (const { from, to } of sound.wires) {
        const next = from[0] === id ? to[0] : to[0] === id ? from[0] : undefined;
        if (next !== undefined && (fault.parts.includes(id) || isPassed(sound, id))) parts.add(next);
      }
  // Of two that use one user band each could give way.
  for (const { rule, parts: both } of report.findings)
    if (rule === "user-band-conflict" && both.some((id) => fault.parts.includes(id)))
      for (const id of both) parts.add(id);
  return parts;
}

/** Lines go through it as they come. */
function isPassed(design: Design, id: PartId): boolean {
  const kind = kindOf(partById(design, id)?.kind ?? "");
  return kind?.inline !== undefined || kind?.delivery !== undefined;
}

function touches(cured: Design, faulty: Design, parts: ReadonlySet<PartId>): boolean {
  const { added, removed, changed, wiresAdded, wiresRemoved } = difference(faulty, cured);
  const touched = [
    ...[...removed, ...changed.map((c) => c.after), ...added].map((p) => p.id),
    ...[...wiresAdded, ...wiresRemoved].flatMap((w) => [w.from[0], w.to[0]]),
  ];
  return touched.some((id) => parts.has(id));
}

/** Whether every receiver and outlet of the sound design is served as before. */
function isRestored(sound: Site, now: Site): boolean {
  const is = new Map(now.report.verdicts.map((v) => [v.part, v]));
  return sound.report.verdicts.every((was) => isServed(was, is.get(was.part)));
}

function isServed(was: Verdict, is: Verdict | undefined): boolean {
  if (was.state !== "fails" && (is === undefined || is.state === "fails")) return false;
  return was.services.every((s) => {
    const same = is?.services.find((t) => t.service === s.service);
    return s.got === 0 || (same !== undefined && same.got >= s.got);
  });
}

export function told({ design, fault, rank, proposals }: Outcome): string {
  const firsts = proposals
    .slice(0, FIRST.cures)
    .map((p) => p.steps.map((s) => `${s.idea}@${s.place}`).join("+"))
    .join(" | ");
  return `${design}: ${fault.id}: ${rank === undefined ? "not cured" : `place ${rank + 1}`} [${firsts}]`;
}
