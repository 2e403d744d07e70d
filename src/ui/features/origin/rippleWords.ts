import { decimal } from "../../kit/format.ts";
import type { LevelOrigin } from "./levelOrigin.ts";

/** How far mismatch moves the level at the end of the way. */
export function rippleWords({ steps }: LevelOrigin): string {
  const { upDb = 0, downDb = 0, periodMHz } = steps.at(-1)?.ripple ?? {};
  const swing = `Mismatch: +${decimal(upDb)} to −${decimal(downDb)} dB`;
  return periodMHz === undefined ? swing : `${swing}, every ${decimal(periodMHz)} MHz`;
}
