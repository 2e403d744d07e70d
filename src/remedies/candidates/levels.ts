/** Too much or too little level: pads, gains, line amplifiers. */

import { partsBeyond } from "../../design/lookup.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { RuleId } from "../../findings/facts.ts";
import type { Finding } from "../../findings/finding.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { PartKind } from "../../parts/contract.ts";
import {
  describedOptions,
  doesCount,
  optionMeaning,
  optionsMeaning,
  standardValues,
} from "../../parts/meanings.ts";
import type { Job } from "../../parts/trade.ts";
import type { Service } from "../../signal/carrier.ts";
import { levelsOf } from "../balance/aim.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { isFed, type Site, type Step, wayUp } from "../site.ts";
import { curePlaceOf } from "./places.ts";

/** Further inside the limit than the limit itself, so that a warm day does not undo it [dB]. */
export const SPARE_DB = 2;

/** Further than this beyond what is missing or too much no gain is turned, to bring all to the middle [dB]. */
const BEYOND_DB = 10;

/** Least gain that amplifiers are set to whose knob ends at 0 dB [dB]; common practice, no source. */
const LEAST_GAIN_DB = 4;

/** What a receiver is lifted by that misses carriers, of which the finding only says how many [dB]. */
const LIFT_DB = 6;

/** How far a finding lies beyond its limit, and to which side [dB]; 0 where it is not about level or noise. */
export function excessDb(finding: Finding): number {
  if (/^dB/.test(finding.unit ?? "")) return (finding.value ?? 0) - (finding.limit ?? 0);
  return isWeak(finding) ? -LIFT_DB : 0;
}

/** Whether level or C/N would help: a carrier that is drowned or stopped needs something else. */
export function isWeak(finding: Finding): boolean {
  if (finding.rule === "low-carrier-to-noise") return true;
  if ("missing" in finding.facts) return finding.facts.missing.reason.kind === "noisy";
  return finding.at.side === "too little";
}

/** The smallest pad that is sold and takes so much. */
export function padFor(db: number): number | undefined {
  const kind = kindOf("attenuator");
  const key = kind && optionMeaning(kind, "chosen loss");
  const sold = kind && key ? standardValues(kind, key) : [];
  return sold.find((pad) => pad >= db) ?? sold.at(-1);
}

function culpritJob(site: Site, finding: Finding): Job | undefined {
  return site.evaluation.record(finding.parts[0] ?? "")?.kind.trade.job;
}

/** Parts that amplify. */
export const AMPLIFYING_JOBS: readonly Job[] = ["amplifier", "mast amplifier"];

/** Parts behind which an attenuator helps all. */
const SENDING_JOBS: readonly Job[] = ["aerial", "signal source"];

/** What nobody wants is filtered out: less of everything leaves as little of what is wanted. */
export function isForeign({ facts }: Finding): boolean {
  return "because" in facts && facts.because === "foreign";
}

/** A pad in the line before a socket or receiver that gets too much, or before an overloaded amplifier. */
export const padBefore: Idea = (site, finding) => {
  const over = excessDb(finding);
  const lossDb = over > 0 ? padFor(over + 1) : undefined;
  const place = curePlaceOf(site, finding);
  const job = culpritJob(site, finding);
  // A tap of the right value needs no pad behind it.
  if (lossDb === undefined || !place || job === "tap" || isForeign(finding)) return [];
  const { part, input } = place;
  const end = part.joined[input];
  const before = end && site.evaluation.record(end[0]);
  if (!before) return [];
  const dcPass = isFed(before, end[1]);
  return [
    candidate("pad", [part.part.id, input, lossDb], { db: lossDb, overDb: over }, (design) => {
      const d = draft(design);
      d.insert("attenuator", { lossDb, dcPass }, [part.part.id, input]);
      return d.result();
    }),
  ];
};

/** A pad behind a source that is too strong for all that follows. */
export const sourcePad: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const lossDb = excessDb(finding) > 0 ? padFor(worstExcessDb(site, finding) + 1) : undefined;
  const job = culpritJob(site, finding);
  if (!place || lossDb === undefined || job === undefined || isForeign(finding)) return [];
  // What one place has too much is taken off there.
  if (!SENDING_JOBS.includes(job) && !AMPLIFYING_JOBS.includes(job) && finding.rule !== "overload") return [];
  const source = wayUp(site, [place.part.part.id, place.input], place.service).at(-1);
  if (!source || !SENDING_JOBS.includes(source.record.kind.trade.job)) return [];
  const { id } = source.record.part;
  // Right at the place it is the same attenuator.
  if (place.part.joined[place.input]?.[0] === id) return [];
  return [
    candidate("source-pad", [id, source.out, lossDb], { db: lossDb }, (design) => {
      const d = draft(design);
      d.insert("attenuator", { lossDb, dcPass: isFed(source.record, source.out) }, [id, source.out]);
      return d.result();
    }),
  ];
};

/** By how much the worst place is too strong for which the same part is named, or this one [dB]. */
function worstExcessDb(site: Site, finding: Finding): number {
  const [culprit] = finding.parts;
  const same = site.report.findings.filter(
    (f) => f.parts[0] === culprit && f.at.side === "too much" && f.at.service === finding.at.service,
  );
  const driven = finding.at.service === undefined ? overdrivenPlaces(site, finding) : [];
  return Math.max(...[finding, ...same, ...driven].map(excessDb));
}

/** Places behind an overdriven part that get too much. */
function overdrivenPlaces(site: Site, finding: Finding): readonly Finding[] {
  const behind = partsBeyond(site.design.wires, [finding.at.part], "downstream");
  return site.report.findings.filter((f) => f.at.side === "too much" && behind.has(f.at.part));
}

/** An attenuator that is there already, with another value. */
export const padValue: Idea = (site, finding) => {
  const over = excessDb(finding);
  const place = curePlaceOf(site, finding);
  if (!place || over <= 0) return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  return way.flatMap(({ record }): readonly Candidate[] => {
    const key = record.kind.trade.job === "pad" ? optionMeaning(record.kind, "chosen loss") : undefined;
    const from = key === undefined ? undefined : record.options[key];
    if (key === undefined || typeof from !== "number") return [];
    const { id } = record.part;
    return standardValues(record.kind, key)
      .filter((value) => value >= from + over)
      .slice(0, 3)
      .map((to) =>
        candidate("pad-value", [id, to], { option: key, from, to }, (design) => {
          const d = draft(design);
          d.set(id, { [key]: to });
          return d.result();
        }),
      );
  });
};

/** Options by which the gain of a part is set, or the level that it gives, for a service. */
function gainOption(record: PartRecord, input: string | null, service: Service): string | undefined {
  const { kind, options } = record;
  const userBands = service === "satellite" ? optionMeaning(kind, "user band level") : undefined;
  // An LNB comes with the level that it has.
  if (userBands !== undefined)
    return describedOptions(kind).get(userBands)?.onSite === "setting" ? userBands : undefined;
  const radio = service === "fm" || service === "dab";
  const ownInput = record.ports.some((p) => p.id === input && p.role === "band");
  const beside = service === "satellite" ? undefined : optionMeaning(kind, "terrestrial gain");
  const key =
    (radio && ownInput ? optionMeaning(kind, "radio gain") : undefined) ??
    gainOf(kind, input) ??
    (service === "tv" ? optionMeaning(kind, "output level") : undefined) ??
    beside;
  const meta = key === undefined ? undefined : describedOptions(kind).get(key);
  return meta && doesCount(meta, options) ? key : undefined;
}

/** The gain of an input, where each has one of its own; else the gain. */
function gainOf(kind: PartKind, input: string | null): string | undefined {
  const all = optionsMeaning(kind, "gain");
  return all.find((key) => describedOptions(kind).get(key)?.ofInput === input) ?? all[0];
}

/** What a gain is turned to the middle for: its sockets then all have something to spare. */
const CENTRED: readonly RuleId[] = ["level-limits", "tuner-blocked"];

/** Gains on the way, turned so that the finding comes inside its limit. */
export const otherGain: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const over = excessDb(finding);
  if (!place || over === 0) return [];
  const isOverload = finding.rule === "overload";
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  const own: Step = { record: place.part, in: place.input, out: finding.wires[0]?.split(/[.>]/)[1] ?? "out" };
  return (isOverload ? [own, ...way] : way).flatMap((step): Candidate[] => {
    const option = gainOption(step.record, step.in, place.service);
    const now = option === undefined ? undefined : step.record.options[option];
    if (option === undefined || typeof now !== "number") return [];
    const isLevel =
      option === optionMeaning(step.record.kind, "user band level") ||
      option === optionMeaning(step.record.kind, "output level");
    const { min = now, max = now } = describedOptions(step.record.kind).get(option) ?? {};
    // Nobody keeps an amplifier that amplifies by next to nothing: it is taken out.
    const least = min === 0 ? Math.min(now, LEAST_GAIN_DB) : min;
    const wishes =
      over > 0
        ? [worstExcessDb(site, finding), over].map((much) => -Math.ceil(much + 1))
        : [Math.ceil(-over + SPARE_DB)];
    const centred = CENTRED.includes(finding.rule) ? centringDb(site, step.record, place.service) : undefined;
    if (centred !== undefined && Math.sign(centred) === -Math.sign(over))
      wishes.unshift(Math.sign(centred) * Math.min(Math.abs(centred), Math.ceil(Math.abs(over) + BEYOND_DB)));
    const id = step.record.part.id;
    const ends = new Set(wishes.map((db) => Math.min(max, Math.max(least, now + db))));
    return [...ends].map((toDb) =>
      candidate("gain", [id, option, toDb], { option, byDb: toDb - now, toDb, isLevel }, (design) => {
        const d = draft(design);
        d.set(id, { [option]: toDb });
        return d.result();
      }),
    );
  });
};

/** What brings the places behind an amplifier as far from one limit as from the other [dB]. */
function centringDb(site: Site, { part }: PartRecord, service: Service): number | undefined {
  const behind = partsBeyond(site.design.wires, [part.id], "downstream");
  const levels = levelsOf(site, service).filter((l) => behind.has(l.part));
  if (levels.length === 0) return undefined;
  const above = Math.min(...levels.map((l) => l.aboveLeastDb));
  const below = Math.min(...levels.map((l) => l.belowMostDb));
  return Math.round((below - above) / 2);
}
