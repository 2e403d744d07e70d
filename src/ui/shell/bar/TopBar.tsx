import { CircleHelp, FolderOpen, Redo2, Share2, Undo2 } from "lucide-react";
import { useApp } from "../../../store/app.ts";
import { useHistory } from "../../../store/hooks.ts";
import { redoStep, undoStep, useStepWords } from "../../../store/steps.ts";
import { VariantMenu } from "../../features/variants/VariantMenu.tsx";
import { shortcutWords } from "../../kit/command.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { openDialog } from "../../kit/panes.ts";
import { useMedia } from "../../kit/useMedia.ts";
import { commandOf } from "../commands.ts";
import { DesignMenu } from "./DesignMenu.tsx";
import { ExampleMenu } from "./ExampleMenu.tsx";
import { Lesson } from "./Lesson.tsx";
import { MoreMenu } from "./MoreMenu.tsx";
import { SaveStateMark } from "./SaveStateMark.tsx";
import { ThemeMenu } from "./ThemeMenu.tsx";
import { TitleField } from "./TitleField.tsx";
import styles from "./TopBar.module.css";

/** From here on the bar holds all that it offers; below it, a menu takes what has no room. */
const HOLDS_ALL = "(min-width: 720px)";
const HOLDS_WORDS = "(min-width: 1100px)";

/** One row: title and state of the design, undo and redo, and the ways to other designs. */
export function TopBar() {
  const holdsAll = useMedia(HOLDS_ALL);
  const holdsWords = useMedia(HOLDS_WORDS);
  const { canUndo, canRedo } = useHistory();
  const opened = useApp((s) => s.opened);
  const steps = useStepWords();
  return (
    <header className={styles.bar} data-region="bar" tabIndex={-1}>
      <h1 className={styles.brand}>
        <Mark />
        {holdsWords ? "Downlead" : <span className="unseen">Downlead</span>}
      </h1>
      <DesignMenu />
      <TitleField key={opened} opened={opened} />
      {holdsAll ? <VariantMenu /> : null}
      <SaveStateMark hasWords={holdsAll} />
      <Lesson hasWords={holdsWords} />
      <IconButton
        icon={Undo2}
        name="Undo"
        hint={steps.undo && `Undo: ${steps.undo}`}
        keys={keysOf("undo")}
        disabled={!canUndo}
        onPress={undoStep}
      />
      {holdsAll ? (
        <>
          <IconButton
            icon={Redo2}
            name="Redo"
            hint={steps.redo && `Redo: ${steps.redo}`}
            keys={keysOf("redo")}
            disabled={!canRedo}
            onPress={redoStep}
          />
          {holdsWords ? (
            <ExampleMenu />
          ) : (
            <IconButton icon={FolderOpen} name="Designs and examples" onPress={() => openDialog("designs")} />
          )}
          {holdsWords ? (
            <button type="button" className="button" onClick={() => openDialog("share")}>
              <Share2 size={16} aria-hidden /> Share
            </button>
          ) : (
            <IconButton icon={Share2} name="Share" onPress={() => openDialog("share")} />
          )}
          <ThemeMenu />
          <IconButton icon={CircleHelp} name="Help" onPress={() => openDialog("help")} />
        </>
      ) : (
        <MoreMenu canRedo={canRedo} />
      )}
    </header>
  );
}

/** As this machine names them: with ⌘ on a Mac. */
function keysOf(id: string): string | undefined {
  const command = commandOf(id);
  return command && shortcutWords(command);
}

function Mark() {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true" focusable="false">
      <path d="M2 20V13h4v7zM9 20V3h4v17zM16 20v-9h4v9z" fill="currentColor" />
    </svg>
  );
}
