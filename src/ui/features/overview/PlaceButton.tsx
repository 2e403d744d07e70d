import { Toolbar } from "radix-ui";
import { memo } from "react";
import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import { judgedAt, type PlaceState } from "../../../findings/placeState.ts";
import { useApp } from "../../../store/app.ts";
import { verdictOf } from "../../../store/hooks.ts";
import { showChainOf } from "../../kit/panes.ts";
import { stateLook } from "../../kit/told/stateLook.ts";
import styles from "./Overview.module.css";

type Props = {
  readonly place: FedPlace;
  /** What tells it apart from its neighbours. */
  readonly name: string;
  /** Its whole name. */
  readonly label: string;
  readonly state: PlaceState;
};

const LOOKS: Readonly<Record<PlaceState, ReturnType<typeof stateLook>>> = {
  fails: stateLook({ state: "fails" }),
  edge: stateLook({ state: "edge" }),
  works: stateLook({ state: "works" }),
  idle: stateLook({ state: "works", idle: "nothing connected" }),
};

/** A place as one cell: works, works on a knife's edge, fails; pressed, it shows the chain of its worst receiver. */
export const PlaceButton = memo(function PlaceButton({ place, name, label, state }: Props) {
  const { Icon, word, tone } = LOOKS[state];
  const open = () => {
    const { report } = useApp.getState();
    const [worst] = judgedAt(place, (id) => verdictOf(report, id));
    showChainOf(worst?.part ?? place.receivers[0] ?? place.key);
  };
  return (
    <Toolbar.Button
      className={styles.placeCell}
      data-tone={tone}
      aria-label={`${label}: ${word}`}
      onClick={open}
    >
      <span className={styles.cellName}>{name}</span>
      <span className={styles.cellMark}>
        <Icon size={12} strokeWidth={3.5} aria-hidden />
      </span>
    </Toolbar.Button>
  );
});
