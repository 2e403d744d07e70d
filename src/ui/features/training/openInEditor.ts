import { caseWords } from "../../../sentences/training/caseWords.ts";
import { useApp } from "../../../store/app.ts";
import type { PracticeSession } from "../../../store/trainingSession.ts";
import { walkPlacesOf, walkServicesAt } from "../../kit/asked/places.ts";
import { startWalk } from "../../kit/asked/walking.ts";
import { openAsNewDesign } from "../documents/actions.ts";
import { leavePractice } from "./actions.ts";

/**
 * The faulty installation as a design of its own, with strips and verdict and all, and the walk that shows the
 * fault. The design that was open before stays stored.
 */
export async function openInEditor({ opened }: PracticeSession): Promise<void> {
  leavePractice();
  const { title, lesson } = caseWords(opened);
  await openAsNewDesign({ ...opened.faulty, title: `${title} (with its fault)`, lesson });
  const { evaluation } = useApp.getState();
  const { part, service } = opened.case.walk;
  const record = evaluation.record(part);
  const place =
    record && walkPlacesOf(record).find((p) => walkServicesAt(evaluation, p).some((s) => s === service));
  const wanted = place && walkServicesAt(evaluation, place).find((s) => s === service);
  if (place && wanted) startWalk(place, { service: wanted });
}
