import { Tooltip } from "radix-ui";
import { useEffect } from "react";
import { useApp } from "../../store/app.ts";
import { useOpening } from "../../store/opening.ts";
import { usePractice } from "../../store/trainingSession.ts";
import { wasSelectedFromPane } from "../canvas/reveal.ts";
import { DropTarget } from "../features/documents/DropTarget.tsx";
import { UpdateBar } from "../features/offline/UpdateBar.tsx";
import { OpeningScreen } from "../features/opening/OpeningScreen.tsx";
import { PrintSheet } from "../features/print/PrintSheet.tsx";
import { PracticeScreen } from "../features/training/PracticeScreen.tsx";
import { goToPart } from "../features/walk/steps.ts";
import { clearQuestion } from "../kit/asked/questionState.ts";
import { dropWalk } from "../kit/asked/walking.ts";
import { usePanes } from "../kit/panes.ts";
import { useMedia } from "../kit/useMedia.ts";
import { Dialogs } from "./Dialogs.tsx";
import { useCommandKeys } from "./keys.ts";
import { TopBar } from "./menus/TopBar.tsx";
import { NarrowLayout } from "./NarrowLayout.tsx";
import { Notices } from "./notices/Notices.tsx";
import { StorageBar } from "./notices/StorageBar.tsx";
import { WideLayout } from "./WideLayout.tsx";
import "../kit/kit.css";
import "./shell.css";
import "../features/print/print.css";

/** Below this width the panes share one bottom sheet. */
const NARROW = "(max-width: 900px)";

export function App() {
  const isNarrow = useMedia(NARROW);
  const session = usePractice((s) => s.session);
  const isAway = useOpening((s) => s.problem !== null || s.working?.isShown === true);
  useFollowSelection();
  useCommandKeys();
  if (isAway)
    return (
      <Tooltip.Provider>
        <OpeningScreen />
        <Notices />
        <DropTarget />
      </Tooltip.Provider>
    );
  if (session)
    return (
      <Tooltip.Provider>
        <PracticeScreen key={session.key} session={session} />
        <Notices />
      </Tooltip.Provider>
    );
  return (
    <Tooltip.Provider>
      <div className={isNarrow ? "app narrow" : "app"}>
        <TopBar isNarrow={isNarrow} />
        <StorageBar />
        <UpdateBar />
        {isNarrow ? <NarrowLayout /> : <WideLayout />}
        <Notices />
        <Dialogs />
        <DropTarget />
      </div>
      <PrintSheet />
    </Tooltip.Provider>
  );
}

/** Turns to what was selected on the canvas: a part to its values, a wire to its spectrum. */
function useFollowSelection(): void {
  const selection = useApp((s) => s.selection);
  useEffect(() => {
    const fromPane = wasSelectedFromPane(selection);
    if (selection.wires.length === 1 && selection.parts.length === 0) {
      if (!fromPane) {
        clearQuestion();
        dropWalk();
      }
      usePanes.setState((s) => ({ spectrumOpen: true, sheet: s.sheet && !fromPane ? "spectrum" : s.sheet }));
    }
    if (fromPane || selection.parts.length === 0) return;
    const [part = ""] = selection.parts;
    goToPart(part);
    usePanes.setState((s) => ({ side: "part", sheet: s.sheet && s.sheet !== "tray" ? "part" : s.sheet }));
  }, [selection]);
}
