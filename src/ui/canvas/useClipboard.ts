/** The browser's own paste, which hands over the clipboard without asking for leave. */
import { useEffect } from "react";
import { useApp } from "../../store/app.ts";
import { isElsewhere } from "../kit/isElsewhere.ts";
import { pasteParts } from "./selectionEdits.ts";
import { fragmentIn, NO_PARTS } from "./systemClipboard.ts";

export function useClipboard(): void {
  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      const target = event.target instanceof Element ? event.target : null;
      if (event.defaultPrevented || isElsewhere(target)) return;
      event.preventDefault();
      const fragment = fragmentIn(event.clipboardData?.getData("text/plain") ?? "");
      if (fragment) pasteParts(fragment);
      else useApp.getState().notify(NO_PARTS, "warning");
    };
    window.addEventListener("paste", onPaste);
    return () => window.removeEventListener("paste", onPaste);
  }, []);
}
