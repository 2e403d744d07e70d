/** Level that falls with frequency: an equaliser, or an amplifier set to rise. */
import type { Finding } from "../../findings/finding.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { onSiteOf, optionMeaning, standardValues } from "../../parts/meanings.ts";
import type { Spectrum } from "../../signal/band.ts";
import { levelsOf } from "../balance/aim.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { isFed, type Site, wayUp } from "../site.ts";
import { excessDb } from "./levels.ts";
import { type CurePlace, curePlaceOf } from "./places.ts";

/** A wideband feed starts at about 300 MHz, far below the usual satellite IF. */
function isWideband(spectrum: Spectrum | undefined): boolean {
  return spectrum?.bands.some((b) => b.origin.service === "satellite" && b.grid.fromMHz < 900) ?? false;
}

/** Whether some carriers are too strong while others of the service could not bear the attenuator that cures that. */
function leavesNoneForPad(site: Site, finding: Finding, { part, service }: CurePlace): boolean {
  const levels = levelsOf(site, service).filter((l) => l.part === part.part.id);
  return levels.some((l) => l.aboveLeastDb < excessDb(finding));
}

export const equaliser: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const over = (finding.value ?? 0) - (finding.limit ?? 0);
  if (!place || over <= 0) return [];
  // Too much of everything is for an attenuator.
  if (finding.rule === "level-limits" && !leavesNoneForPad(site, finding, place)) return [];
  const { part, input, service } = place;
  const end = part.joined[input];
  const before = end && site.evaluation.record(end[0]);
  if (!before) return [];
  const dcPass = isFed(before, end[1]);
  const range = service === "satellite" ? (isWideband(part.inputs[input]) ? "own" : "sat") : "tv";
  const kind = kindOf("equaliser");
  const key = kind && optionMeaning(kind, "slope");
  return (kind && key ? standardValues(kind, key) : [])
    .filter((db) => db > over)
    .slice(0, 2)
    .map((slopeDb) =>
      candidate("equaliser", [part.part.id, input, slopeDb], { db: slopeDb }, (design) => {
        const d = draft(design);
        d.insert("equaliser", { slopeDb, range, dcPass }, [part.part.id, input]);
        return d.result();
      }),
    );
};

export const amplifierSlope: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const over = (finding.value ?? 0) - (finding.limit ?? 0);
  if (!place || over <= 0) return [];
  return wayUp(site, [place.part.part.id, place.input], place.service).flatMap(({ record }): Candidate[] => {
    const key = optionMeaning(record.kind, "slope");
    const now = key === undefined ? undefined : record.options[key];
    if (key === undefined || typeof now !== "number" || onSiteOf(record.kind, key) !== "setting") return [];
    const most = standardValues(record.kind, key).at(-1) ?? now;
    const wanted = Math.min(most, now + Math.ceil(over) + 1);
    const id = record.part.id;
    return [
      candidate("amplifier-slope", [id, wanted], { db: wanted }, (design) => {
        const d = draft(design);
        d.set(id, { [key]: wanted });
        return d.result();
      }),
    ];
  });
};
