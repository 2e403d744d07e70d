import { CircleHelp, FolderOpen, Redo2, Share2, Undo2 } from "lucide-react";
import { useApp } from "../../../store/app.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { useHistory } from "../../../store/hooks.ts";
import { redoStep, undoStep, useStepWords } from "../../../store/steps.ts";
import { VariantMenu } from "../../features/variants/VariantMenu.tsx";
import { IconButton } from "../../kit/IconButton.tsx";
import { openDialog } from "../../kit/panes.ts";
import { DesignMenu } from "./DesignMenu.tsx";
import { ExampleMenu } from "./ExampleMenu.tsx";
import { SaveStateMark } from "./SaveStateMark.tsx";
import { ThemeMenu } from "./ThemeMenu.tsx";
import { TitleField } from "./TitleField.tsx";

/** Title and state of the design, undo and redo, and the ways to other designs. */
export function TopBar({ isNarrow }: { readonly isNarrow: boolean }) {
  const { canUndo, canRedo } = useHistory();
  const opened = useApp((s) => s.opened);
  const steps = useStepWords();
  return (
    <header>
      <div className="top-bar">
        <h1 className="brand">
          <Mark />
          {isNarrow ? <span className="unseen">Downlead</span> : "Downlead"}
        </h1>
        <DesignMenu />
        <TitleField key={opened} opened={opened} />
        <VariantMenu />
        <SaveStateMark />
        <span className="spring" />
        <IconButton icon={Undo2} name="Undo" keys="Ctrl+Z" hint={steps.undo && `Undo: ${steps.undo}`} disabled={!canUndo} onPress={undoStep} />
        <IconButton icon={Redo2} name="Redo" keys="Ctrl+Shift+Z" hint={steps.redo && `Redo: ${steps.redo}`} disabled={!canRedo} onPress={redoStep} />
        {isNarrow ? (
          <IconButton icon={FolderOpen} name="Designs and examples" onPress={() => openDialog("designs")} />
        ) : (
          <ExampleMenu />
        )}
        {isNarrow ? (
          <IconButton icon={Share2} name="Share" onPress={() => openDialog("share")} />
        ) : (
          <button type="button" className="button" onClick={() => openDialog("share")}>
            <Share2 size={16} aria-hidden /> Share
          </button>
        )}
        <ThemeMenu />
        <IconButton icon={CircleHelp} name="Help" onPress={() => openDialog("help")} />
      </div>
      <LessonBar />
    </header>
  );
}

function Mark() {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true" focusable="false">
      <path d="M2 20V13h4v7zM9 20V3h4v17zM16 20v-9h4v9z" fill="currentColor" />
    </svg>
  );
}

/** The one line that an example teaches; once it is changed, it may no longer be true. */
function LessonBar() {
  const lesson = useApp((s) => s.design.lesson);
  const isOwn = useDocuments((s) => s.current !== null);
  return lesson && !isOwn ? <p className="lesson-bar">{lesson}</p> : null;
}
