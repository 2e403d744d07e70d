import { useApp } from "../../store/app.ts";
import type { Session } from "../../store/trainingSession.ts";
import { openAside } from "../documents/actions.ts";
import { placesOf, servicesAt } from "../walk/places.ts";
import { startWalk } from "../walk/walking.ts";
import { leavePractice } from "./actions.ts";

/**
 * The faulty installation as a design of its own, with strips and verdict and all, and the walk that shows the
 * fault. The design that was open before stays stored.
 */
export async function openInEditor({ opened }: Session): Promise<void> {
  leavePractice();
  const { title, lesson } = opened.case;
  await openAside({ ...opened.faulty, title: `${title} (with its fault)`, lesson });
  const { evaluation } = useApp.getState();
  const { part, service } = opened.case.walk;
  const record = evaluation.record(part);
  const place = record && placesOf(record).find((p) => servicesAt(evaluation, p).some((s) => s === service));
  const wanted = place && servicesAt(evaluation, place).find((s) => s === service);
  if (place && wanted) startWalk(place, { service: wanted });
}
