/** Receivers, or outlets where there is no receiver, whose chains can be shown: those that fail first. */
import { useEffect } from "react";
import type { Report, Verdict } from "../../../findings/finding.ts";
import { remembered } from "../../../signal/remember.ts";
import { useApp } from "../../../store/app.ts";
import { useWalking } from "../../kit/asked/walking.ts";
import { choosePlace, usePanes } from "../../kit/panes.ts";

const RANK: readonly Verdict["state"][] = ["fails", "edge", "works"];

/** What is not connected or switched off comes last; among equals the order of the design. */
function sorted({ verdicts }: Report): readonly Verdict[] {
  const receivers = verdicts.filter((v) => v.role === "receiver");
  const rank = (v: Verdict) => (v.idle ? RANK.length : RANK.indexOf(v.state));
  return [...(receivers.length > 0 ? receivers : verdicts)].sort((a, b) => rank(a) - rank(b));
}

const known = new WeakMap<Report, readonly Verdict[]>();

export function usePlaces(): readonly Verdict[] {
  return useApp((s) => remembered(known, s.report, () => sorted(s.report)));
}

/** Whose chain is shown: the one chosen as long as it is there, else the first. */
export function useShownPlace(): Verdict | undefined {
  const places = usePlaces();
  const chosen = usePanes((s) => s.chainOf);
  const ofChosen = useApp((s) => s.report.verdicts.find((v) => v.part === chosen));
  return ofChosen ?? places[0];
}

/** A receiver or outlet that is selected anywhere is the one whose chain is shown. */
export function useFollowSelectedPlace(): void {
  const selected = useApp((s) => {
    const [part, ...others] = s.selection.parts;
    return others.length === 0 && s.report.verdicts.some((v) => v.part === part) ? part : undefined;
  });
  useEffect(() => {
    if (selected !== undefined) choosePlace(selected);
  }, [selected]);
}

/** So is the one that a walk leads to. */
export function useFollowWalk(): void {
  const part = useWalking()?.place.part;
  useEffect(() => {
    if (part !== undefined) choosePlace(part);
  }, [part]);
}
