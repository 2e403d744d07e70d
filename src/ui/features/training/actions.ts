/** Opening cases, from the list, from a seed, or from an address; the document stays as it is. */
import type { Design } from "../../../design/design.ts";
import { decodeLink, shareLink } from "../../../design/link.ts";
import { openCase, type TrainingCase } from "../../../remedies/training/case.ts";
import { caseOf } from "../../../remedies/training/cases.ts";
import { formatTraining, parseTraining } from "../../../remedies/training/link.ts";
import { HIGHEST_SEED, randomCase } from "../../../remedies/training/randomCase.ts";
import { randomCaseProblem } from "../../../sentences/training/caseWords.ts";
import { useApp } from "../../../store/app.ts";
import { useTraining } from "../../../store/training.ts";
import { type PracticeSession, progressKey, usePractice } from "../../../store/trainingSession.ts";
import { linkAddress, withoutAddressRequest } from "../../kit/addressRequest.ts";
import { openDialog } from "../../kit/panes.ts";

/** Null, or a sentence that says why no case was opened. */
export type CaseProblem = string | null;

async function begin(session: PracticeSession): Promise<void> {
  useApp.getState().closePreview();
  await useTraining.getState().load();
  openDialog(null);
  usePractice.getState().open(session);
  // The address is the case now: it can be handed on, and coming back to it comes back here.
  window.history.replaceState(null, "", linkAddress(window.location.href, session.fragment));
}

export async function openGuided(chosen: TrainingCase): Promise<void> {
  const opened = openCase(chosen);
  await begin({
    opened,
    key: progressKey(opened),
    fragment: formatTraining({ type: "case", id: chosen.id }),
  });
}

/** A case made from a design that works; the seed decides what is wrong with it. */
export async function openRandom(design: Design, seed: number): Promise<CaseProblem> {
  const made = randomCase(design, seed);
  if (!made.ok) return randomCaseProblem(design, made.problem);
  const { opened } = made;
  const packed = await shareLink(design);
  if (!packed.ok) return packed.problem;
  const fragment = `${formatTraining({ type: "seed", seed })}&${packed.fragment}`;
  await begin({ opened, key: progressKey(opened), fragment });
  return null;
}

/**
 * Opens what the fragment of an address asks for: "t1." and a case, or a seed and "&" and a design.
 * `isFit` looks at a design from outside first; where it is not, that has been said.
 */
export async function openTraining(
  fragment: string,
  isFit: (design: Design) => Promise<boolean> = async () => true,
): Promise<CaseProblem> {
  const [mark = "", link = ""] = fragment.split("&", 2);
  const ref = parseTraining(mark);
  if (!ref) return "This address names no practice case: copy it again to its very end.";
  if (ref.type === "case") {
    const chosen = caseOf(ref.id);
    if (!chosen) return `There is no practice case “${ref.id}”. All of them are under “Practice”.`;
    await openGuided(chosen);
    return null;
  }
  if (link === "") return "This address holds a seed but no design to make the case from: copy it again.";
  const reading = await decodeLink(link);
  if (!reading.ok) return reading.problem;
  return (await isFit(reading.design)) ? openRandom(reading.design, ref.seed) : null;
}

export function leavePractice(): void {
  usePractice.getState().close();
  window.history.replaceState(null, "", withoutAddressRequest(window.location.href));
}

export function freshSeed(): number {
  return Math.floor(Math.random() * 100_000);
}

/** A seed as it was typed; null for anything that is none. */
export function seedOf(text: string): number | null {
  const seed = Number(text.trim());
  return /^\d+$/.test(text.trim()) && seed <= HIGHEST_SEED ? seed : null;
}
