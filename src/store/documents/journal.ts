/**
 * What has to be written so that the journal in the storage tells the history of the open design: steps that are
 * new, steps that fell away, and now and then a whole text, so that no way through the journal is long.
 */
import type { Design } from "../../design/design.ts";
import { writeDesign } from "../../design/file.ts";
import { patchBetween } from "../../design/patch.ts";
import type { DocumentChange } from "./documentStorage.ts";
import { type History, presentOf } from "./history.ts";

/** The journal in the storage, as far as this window knows. */
export type OnDisk = {
  /** What it leads through; the very objects, so that one look tells what is new. */
  readonly states: readonly Design[];
  /** Place of the first of them. */
  readonly first: number;
  /** Places at which whole texts lie, the latest last. */
  readonly texts: readonly number[];
};

type JournalChange = Omit<DocumentChange, "head" | "revisions">;

/** As many steps may lie between the present state and a whole text. */
const MOST_STEPS = 30;
/** Of earlier texts this many stay: should one be damaged, the other leads on. */
const EARLIER_TEXTS = 1;

/**
 * The change, and what then lies there. `disk`: null where nothing does. `wantsText`: whether to close with a whole
 * text of the present state, as on leaving.
 */
export function journalChange(
  disk: OnDisk | null,
  history: History,
  wantsText: boolean,
): { readonly change: JournalChange; readonly at: number; readonly disk: OnDisk } {
  const { states } = history;
  const [oldest] = states;
  const start = disk && oldest ? disk.states.indexOf(oldest) : -1;
  const isKnown = disk !== null && start >= 0;
  // Nothing in common: places of their own, above all that lie there.
  const first = isKnown ? disk.first + start : disk ? disk.first + disk.states.length : 0;
  const common = isKnown ? commonLength(disk.states, start, states) : 0;
  const at = first + history.at;

  const valid = (isKnown ? disk.texts : []).filter((place) => place >= first && place < first + common);
  const isNear = valid.some((place) => (wantsText ? place === at : Math.abs(place - at) < MOST_STEPS));
  const keepTexts = isNear ? valid : valid.slice(-EARLIER_TEXTS);
  return {
    at,
    change: {
      dropFrom: first + common,
      dropBelow: first + 1,
      steps: states.flatMap((state, i) => {
        const before = states[i - 1];
        if (i < common || !before) return [];
        // Two states may say the same: an edit and its counterpart melted into one step.
        return [{ at: first + i, patch: patchBetween(before, state) ?? {} }];
      }),
      text: isNear ? null : { at, text: writeDesign(presentOf(history)) },
      keepTexts,
    },
    disk: { states, first, texts: isNear ? keepTexts : [...keepTexts, at] },
  };
}

function commonLength(disk: readonly Design[], start: number, states: readonly Design[]): number {
  const differing = states.findIndex((state, i) => state !== disk[start + i]);
  return differing === -1 ? states.length : differing;
}
