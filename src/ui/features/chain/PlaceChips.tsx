import { ToggleGroup } from "radix-ui";
import { memo, useEffect, useRef } from "react";
import type { Verdict } from "../../../findings/finding.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { usePart } from "../../../store/hooks.ts";
import { fittingName } from "../../canvas/lettering.ts";
import { choosePlace } from "../../kit/panes.ts";
import { stateLook } from "../../kit/told/stateLook.ts";
import styles from "./PlaceChips.module.css";
import { usePlaces, useShownPlace } from "./shownPlaces.ts";

/** Longer names lose their middle [px]. */
const CHIP_ROOM = { widthPx: 190, sizePx: 14 } as const;

/** Whose chain is shown, as a row that scrolls sideways: one stop for the Tab key, the arrow keys choose. */
export function PlaceChips() {
  const places = usePlaces();
  const shown = useShownPlace();
  const row = useRef<HTMLDivElement>(null);
  const part = shown?.part ?? "";
  // biome-ignore lint/correctness/useExhaustiveDependencies: brought into view whenever another one is chosen.
  useEffect(() => {
    const chip = row.current?.querySelector('[data-state="on"]');
    chip?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [part]);
  if (!shown) return null;
  // One that no chip is for, an outlet among receivers, was chosen in the overview.
  const all = places.some((v) => v.part === part) ? places : [shown, ...places];
  return (
    <ToggleGroup.Root
      ref={row}
      type="single"
      className={styles.placeChips}
      aria-label="Chain of"
      value={part}
      onValueChange={(value) => {
        if (value !== "") choosePlace(value);
      }}
    >
      {all.map((verdict) => (
        <PlaceChip key={verdict.part} verdict={verdict} />
      ))}
    </ToggleGroup.Root>
  );
}

const PlaceChip = memo(function PlaceChip({ verdict }: { readonly verdict: Verdict }) {
  const label = usePart(verdict.part)?.label || verdict.part;
  const { Icon, word, tone } = stateLook(verdict);
  return (
    <ToggleGroup.Item className={styles.placeChip} value={verdict.part} data-tone={tone}>
      <span className={styles.placeMark}>
        <Icon size={14} strokeWidth={3} aria-hidden />
        <span className="unseen">{capital(word)}: </span>
      </span>
      <span className="unseen">{label}</span>
      <span aria-hidden title={label}>
        {fittingName(label, 1, CHIP_ROOM)}
      </span>
    </ToggleGroup.Item>
  );
});
