/** Two stacking converters on one line: user bands of its own for the second. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { MOST_USER_BANDS, USUAL_CENTRES_MHZ, type UserBand } from "../../parts/userBands.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";
import { assignUserBands, setUserBands, tunerCountOf, type UserBandRow } from "./userBands.ts";

/** Width of a user band of one's own list [MHz], and what is left free beside each; typical, from memory. */
const WIDTH_MHZ = 46;
const GUARD_MHZ = 4;

export const otherUserBands: Idea = (site, finding) => {
  if (finding.rule !== "shared-frequencies") return [];
  const ends = [finding.facts.victim.part, finding.facts.other.part].flatMap((id) => {
    const record = site.evaluation.record(id);
    const stack = record?.treatment.stacks?.[0];
    return record && stack ? [{ record, bands: stack.userBands }] : [];
  });
  const [a, b] = ends;
  if (!a || !b || a.record === b.record) return [];
  return [bandsBeside(site, b, a), bandsBeside(site, a, b)].flatMap((one) => one ?? []);
};

type Stacking = { readonly record: PartRecord; readonly bands: readonly UserBand[] };

/** The second converter set to what the first leaves free, and every tuner on their line to a band of its own. */
function bandsBeside(site: Site, second: Stacking, first: Stacking): Candidate | undefined {
  const key = optionMeaning(second.record.kind, "user band set");
  const receivers = site.evaluation.records.filter((r) => hearsBoth(r, first, second));
  const rows = freeBeside(first.bands);
  if (!key || receivers.length === 0 || rows.length === 0) return undefined;
  const given = assignUserBands(
    receivers.map(({ part, options }) => ({ receiver: part.id, tuners: tunerCountOf(options) })),
    [...first.bands.map(({ number, centreMHz }) => ({ number, centreMHz })), ...rows],
  );
  if (!given) return undefined;
  const { id } = second.record.part;
  return candidate(
    "other-user-bands",
    [id],
    { first: first.record.part.id, count: rows.length },
    (design) => {
      const d = draft(design);
      d.set(id, { [key]: "own", ownBands: rows });
      setUserBands(d, given);
      return d.result();
    },
  );
}

function hearsBoth(record: PartRecord, first: Stacking, second: Stacking): boolean {
  if (record.kind.trade.takes !== "stacked") return false;
  return Object.values(record.inputs).some(({ bands }) =>
    [first, second].every((s) => bands.some((b) => b.stack?.part === s.record.part.id)),
  );
}

/** Numbers and centres that another converter's user bands leave free, as many as the older standard has. */
function freeBeside(taken: readonly UserBand[]): readonly UserBandRow[] {
  const numbers = new Set(taken.map((b) => b.number));
  const most = MOST_USER_BANDS["EN 50494"];
  const free = Array.from({ length: most }, (_, i) => i + 1).filter((n) => !numbers.has(n));
  const isClear = (centreMHz: number) =>
    taken.every((b) => Math.abs(b.centreMHz - centreMHz) >= (b.widthMHz + WIDTH_MHZ) / 2 + GUARD_MHZ);
  const centres = [...USUAL_CENTRES_MHZ.thirtyTwo].sort((a, b) => a - b).filter(isClear);
  return free.flatMap((number, i) => {
    // Spread over what is free, so that the filters have room between them.
    const centreMHz = centres[Math.floor((i * centres.length) / free.length)];
    return centreMHz === undefined ? [] : [{ number, centreMHz }];
  });
}
