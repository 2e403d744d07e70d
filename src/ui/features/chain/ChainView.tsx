import { useMemo } from "react";
import { receiverChain } from "../../../findings/receiverChain.ts";
import { useApp } from "../../../store/app.ts";
import { useStepInView } from "../../canvas/useStepInView.ts";
import { useWalking } from "../../kit/asked/walking.ts";
import { showPane } from "../../kit/panes.ts";
import { useSize } from "../../kit/useSize.ts";
import { ChainEnd } from "./ChainEnd.tsx";
import { ChainStepItem } from "./ChainStepItem.tsx";
import styles from "./ChainView.module.css";
import { PlaceChips } from "./PlaceChips.tsx";
import { useFollowSelectedPlace, useFollowWalk, useShownPlace } from "./shownPlaces.ts";

/** The way from the roof to one receiver, from top to bottom, with the strip of every wire on it. */
export function ChainView() {
  useFollowSelectedPlace();
  useFollowWalk();
  const verdict = useShownPlace();
  const evaluation = useApp((s) => s.evaluation);
  const report = useApp((s) => s.report);
  const [attach, size] = useSize();
  const walking = useWalking();
  // A walk there goes its own way, which may be another than that of what is missing.
  const isWalked = walking?.view === "signal" && walking.place.part === verdict?.part;
  const service = isWalked ? walking.service : undefined;
  const steps = useMemo(
    () => (verdict ? receiverChain(evaluation, verdict, report.causes, service) : []),
    [evaluation, verdict, report, service],
  );
  const scroll = useStepInView<HTMLDivElement>(steps);
  if (!verdict) return <NoPlace />;
  const label = evaluation.record(verdict.part)?.part.label || verdict.part;
  return (
    <div className={styles.chainView} data-chooses-parts="">
      <PlaceChips />
      <div className={styles.chainScroll} data-scrolls="" ref={scroll}>
        <ol className={styles.way} aria-label={`Way of the signal to ${label}`} ref={attach}>
          {steps.map((step, n) =>
            step.part === verdict.part ? (
              <ChainEnd key={step.part} step={step} verdict={verdict} from={steps[n - 1]} />
            ) : (
              <ChainStepItem key={step.part} step={step} from={steps[n - 1]} width={size?.width ?? 0} />
            ),
          )}
        </ol>
      </div>
    </div>
  );
}

function NoPlace() {
  return (
    <div className="empty">
      <h3>No receiver yet</h3>
      <p>Add a receiver or an outlet, and the way of its signal is shown here from the roof down.</p>
      <div className="button-row">
        <button type="button" className="button main" onClick={() => showPane("tray")}>
          Show parts
        </button>
      </div>
    </div>
  );
}
