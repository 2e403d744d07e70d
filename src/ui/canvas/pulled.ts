/** The wire that is being pulled, and the port that the pointer is near: known to the canvas alone, nothing follows. */
import { create } from "zustand";
import type { PortRef } from "../../design/design.ts";
import type { Box, Point } from "./layout.ts";

export type Pulled = {
  readonly from: PortRef;
  readonly start: Point;
  readonly end: Point;
  readonly status: "open" | "valid" | "invalid";
  /** Why it may not go where it is. */
  readonly reason: string | null;
  /** The card that it would be led to, where that is no port of it. */
  readonly card: Box | null;
};

type State = { readonly wire: Pulled | null; readonly near: Point | null };

export const usePulled = create<State>()(() => ({ wire: null, near: null }));

export function setPulled(wire: Pulled | null): void {
  if (wire !== usePulled.getState().wire) usePulled.setState({ wire });
}

export function setNear(near: Point | null): void {
  const before = usePulled.getState().near;
  if (before?.x !== near?.x || before?.y !== near?.y) usePulled.setState({ near });
}
