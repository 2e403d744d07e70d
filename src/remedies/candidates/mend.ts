/** What is wrong with a part by itself: switched off, out of its aim, wet, of steel, a tired supply. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Blamed } from "../../findings/blame/culprit.ts";
import type { Finding } from "../../findings/finding.ts";
import { NEW_RUN_GRADES } from "../../parts/cable.ts";
import { defaultOptions } from "../../parts/catalogue.ts";
import { defectsOf, onSiteOf, optionMeaning, optionsMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { recordsAround } from "./around.ts";
import { madeAnew } from "./cable.ts";

/** Less than a converter takes for 18 V, with the drop of a usual cable [V]; common practice, no source. */
const TIRED_VOLTS = 17;
/** An aerial this far below a usual level is more likely out of its aim than in a poor place [dB]; from memory. */
const OFF_AIM_DB = 12;

/** Puts right what the part itself shows to be wrong. */
export const mend: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record): readonly Candidate[] => {
    if (record.kind.trade.defect) return [madeAnew(record.part.id)];
    if (record.kind.trade.job === "cable") return isOtherTrunk(record, finding) ? [] : newCable(record);
    return [
      ...defects(record, finding),
      ...rightFeed(record, finding),
      ...tiredSupply(record),
      ...aimedAerial(record),
    ];
  });

function defects(record: PartRecord, finding: Finding): readonly Candidate[] {
  // A neighbour's receiver that is off is no fault of the installation, though it would feed the LNB when on.
  if (record.kind.reception && finding.parts[0] !== record.part.id) return [];
  const aim = optionMeaning(record.kind, "pointing loss");
  const turn = optionMeaning(record.kind, "skew error");
  // What shorts a line is for those who look for shorts.
  const block = optionMeaning(record.kind, "direct current block");
  // A value that is fixed at the factory takes another part, which other ideas put in.
  const wrong = defectsOf(record.kind, record.options).filter(
    ({ option }) => option !== block && onSiteOf(record.kind, option) !== undefined,
  );
  return wrong.map(({ option, value, soundValue }) =>
    set(option === aim ? "aim-dish" : option === turn ? "turn-lnb" : "mend", record, {
      option,
      from: value,
      to: soundValue,
    }),
  );
}

/** An LNB made for linear waves where circular ones come, or the other way round: another in its place. */
function rightFeed(record: PartRecord, finding: Finding): readonly Candidate[] {
  const key = optionMeaning(record.kind, "feed type");
  if (key === undefined || blamedOf(finding)?.does !== "wrong polariser") return [];
  const { id } = record.part;
  if (blamedOf(finding)?.part !== id) return [];
  const feed = record.options[key] === "circular" ? "linear" : "circular";
  return [
    candidate("right-feed", [id, feed], { feed }, (design) => {
      const d = draft(design);
      d.set(id, { [key]: feed });
      return d.result();
    }),
  ];
}

/** What a finding says of its culprit; undefined where it names none. */
export function blamedOf({ facts }: Finding): Blamed | undefined {
  if ("missing" in facts) return facts.missing.blamed;
  return "culprit" in facts && typeof facts.culprit === "object" && "does" in facts.culprit
    ? facts.culprit
    : undefined;
}

type Setting = { readonly option: string; readonly from: unknown; readonly to: unknown };

export function set(
  idea: "mend" | "aim-dish" | "turn-lnb" | "aim-aerial",
  record: PartRecord,
  facts: Setting,
): Candidate {
  const { id } = record.part;
  return candidate(idea, [id, facts.option], facts, (design) => {
    const d = draft(design);
    d.set(id, { [facts.option]: facts.to });
    return d.result();
  });
}

/** What is wrong at one input of a unit no other trunk cures, however poor that is too. */
function isOtherTrunk({ part }: PartRecord, { rule, parts }: Finding): boolean {
  return rule === "stacking-input" && !parts.includes(part.id);
}

/** A run that loses more than its sort should, or is of a poor sort: a new one of copper. */
function newCable(record: PartRecord): readonly Candidate[] {
  const { id } = record.part;
  if (defectsOf(record.kind, record.options).length === 0) return [];
  const key = optionMeaning(record.kind, "grade");
  if (key === undefined) return [];
  return NEW_RUN_GRADES.map((grade) =>
    candidate("new-cable", [id, grade], { grade }, (design) => {
      const d = draft(design);
      d.set(id, { [key]: grade });
      return d.result();
    }),
  );
}

function tiredSupply(record: PartRecord): readonly Candidate[] {
  return optionsMeaning(record.kind, "horizontal volts").flatMap((option) => {
    const from = record.options[option];
    const to = defaultOptions(record.kind)[option];
    return typeof from === "number" && from < TIRED_VOLTS ? [set("mend", record, { option, from, to })] : [];
  });
}

/** An aerial with much less than is usual at its terminals. */
function aimedAerial(record: PartRecord): readonly Candidate[] {
  if (record.kind.trade.job !== "aerial") return [];
  const usual = defaultOptions(record.kind);
  return optionsMeaning(record.kind, "source level").flatMap((option) => {
    const [from, to] = [record.options[option], usual[option]];
    const isOff = typeof from === "number" && typeof to === "number" && from < to - OFF_AIM_DB;
    return isOff ? [set("aim-aerial", record, { option, from, to })] : [];
  });
}
