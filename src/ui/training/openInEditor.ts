import type { Session } from "../../store/trainingSession.ts";
import { openAside } from "../documents/actions.ts";
import { leavePractice } from "./actions.ts";

/** The faulty installation as a design of its own, with strips and verdict and all; the present one stays stored. */
export async function openInEditor({ opened }: Session): Promise<void> {
  leavePractice();
  await openAside({ ...opened.faulty, title: `${opened.case.title} (with its fault)` });
}
