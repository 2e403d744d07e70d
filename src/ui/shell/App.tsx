import { Tooltip } from "radix-ui";
import { useEffect } from "react";
import { useApp } from "../../store/app.ts";
import { useOpening } from "../../store/opening.ts";
import { usePractice } from "../../store/trainingSession.ts";
import { wasSelectedFromPane } from "../canvas/reveal.ts";
import { VIEW_COMMANDS } from "../canvas/viewCommands.ts";
import { applyProposal } from "../features/cures/actions.ts";
import { openEmpty, openExample } from "../features/documents/actions.ts";
import { DropTarget } from "../features/documents/DropTarget.tsx";
import { UpdateBar } from "../features/offline/UpdateBar.tsx";
import { OpeningScreen } from "../features/opening/OpeningScreen.tsx";
import { PrintSheet } from "../features/print/PrintSheet.tsx";
import { Tour } from "../features/tour/Tour.tsx";
import { goToPart } from "../features/walk/steps.ts";
import { clearQuestion } from "../kit/asked/questionState.ts";
import { dropWalk } from "../kit/asked/walking.ts";
import type { Command } from "../kit/command.ts";
import { usePanes } from "../kit/panes.ts";
import { useMedia } from "../kit/useMedia.ts";
import { TopBar } from "./bar/TopBar.tsx";
import { COMMANDS } from "./commands.ts";
import { Dialogs } from "./Dialogs.tsx";
import { useCommandKeys } from "./keys.ts";
import { useAfterwards } from "./later.ts";
import { NarrowLayout } from "./NarrowLayout.tsx";
import { Notices } from "./notices/Notices.tsx";
import { StorageBar } from "./notices/StorageBar.tsx";
import { PhoneLayout } from "./PhoneLayout.tsx";
import { watchRegions } from "./regions.ts";
import { SkipLinks } from "./SkipLinks.tsx";
import { WideLayout } from "./WideLayout.tsx";
import "../kit/layers.css";
import "../kit/kit.css";
import "./shell.css";
import "../features/print/print.css";
import "../kit/contrast.css";

/** Below this width the panes share one bottom sheet. */
const NARROW = "(max-width: 900px)";
/** A phone, upright or on its side: too little room for the drawing to be what one looks at first. */
const PHONE = "(max-width: 600px), (max-width: 1000px) and (max-height: 500px)";
const TURNED = "(min-width: 601px)";

export function App() {
  const isNarrow = useMedia(NARROW);
  const isPhone = useMedia(PHONE);
  const isTurned = useMedia(TURNED);
  const session = usePractice((s) => s.session);
  const isAway = useOpening((s) => s.problem !== null || s.working?.isShown === true);
  const PracticeScreen = useAfterwards({ isWanted: session !== null })?.PracticeScreen;
  useFollowSelection();
  if (isAway)
    return (
      <Tooltip.Provider>
        <OpeningScreen />
        <Notices />
        <DropTarget />
      </Tooltip.Provider>
    );
  if (session && PracticeScreen)
    return (
      <Tooltip.Provider>
        <Keys commands={VIEW_COMMANDS} />
        <PracticeScreen key={session.key} session={session} />
        <Notices />
      </Tooltip.Provider>
    );
  return (
    <Tooltip.Provider>
      <Keys commands={COMMANDS} />
      <div className={isNarrow || isPhone ? "app narrow" : "app"}>
        <SkipLinks />
        <TopBar />
        <StorageBar />
        <UpdateBar />
        {isPhone ? <PhoneLayout isTurned={isTurned} /> : isNarrow ? <NarrowLayout /> : <WideLayout />}
        <Notices />
        <Dialogs />
        <Tour openExample={openExample} openNew={openEmpty} applyCure={applyProposal} />
        <DropTarget />
      </div>
      <PrintSheet />
    </Tooltip.Provider>
  );
}

/** The keys of commands, while there is something that they could work on. */
function Keys({ commands }: { readonly commands: readonly Command[] }) {
  useCommandKeys(commands);
  useEffect(watchRegions, []);
  return null;
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
    usePanes.setState((s) => ({
      side: "part",
      sideOpen: true,
      sheet: s.sheet && s.sheet !== "tray" ? "part" : s.sheet,
    }));
  }, [selection]);
}
