import { useMemo } from "react";
import { feedingGroupsOf } from "../../../design/feeding/feedingGroups.ts";
import { useShownDesign } from "../../../store/hooks.ts";
import { StartButtons } from "../../kit/StartButtons.tsx";
import { useSize } from "../../kit/useSize.ts";
import { GroupCells } from "./GroupCells.tsx";
import { HeadCards } from "./HeadCards.tsx";
import styles from "./Overview.module.css";

/** The whole house at a glance: a cell for every place, under the part that feeds it. */
export function OverviewPane() {
  const design = useShownDesign();
  const { head, groups } = useMemo(() => feedingGroupsOf(design), [design]);
  const [attach, size] = useSize();
  if (design.parts.length === 0)
    return (
      <div className="empty">
        <h3>Nothing drawn yet</h3>
        <p>Flats and rooms are shown here, under the part that feeds them.</p>
        <StartButtons />
      </div>
    );
  return (
    <div className={styles.overview} data-scrolls="" data-chooses-parts="">
      <div className={styles.overviewBody} ref={attach}>
        <HeadCards parts={head} />
        {groups.map((group) => (
          <GroupCells key={group.key} group={group} width={size?.width ?? 0} />
        ))}
      </div>
    </div>
  );
}
