/**
 * Parts on the clipboard of the system, so that another window takes them too. The text is a design file of its own,
 * read with the same checks as any file. Where the browser refuses, this window's own memory serves.
 */
import type { Fragment } from "../../design/edits/clipboard.ts";
import { readDesign, writeDesign } from "../../design/file.ts";
import { useApp } from "../../store/app.ts";

/** What this window wrote last, and whether the system took it. */
let written: { readonly text: string; readonly opened: number; isThere: boolean } | null = null;

export function writeClipboard({ parts, wires }: Fragment): void {
  const text = writeDesign({ title: "Copied parts", parts, wires });
  const own = { text, opened: useApp.getState().opened, isThere: false };
  written = own;
  navigator.clipboard?.writeText(text).then(
    () => {
      own.isThere = true;
    },
    // A page that may not write there still copies within this window.
    () => undefined,
  );
}

/** What this window copied last; from another design without what fed it there. */
function remembered(): Fragment | null {
  const { clipboard, opened } = useApp.getState();
  if (!clipboard || written?.opened === opened) return clipboard;
  return { parts: clipboard.parts, wires: clipboard.wires };
}

/** What a paste means: the parts in a text from the system, or those that this window copied last. */
export function fragmentIn(text: string): Fragment | null {
  const own = remembered();
  // The same text knows less than the memory: not what fed the parts.
  if (own && (text === written?.text || (text.trim() === "" && !written?.isThere))) return own;
  const read = text.trim() === "" ? null : readDesign(text);
  if (read?.ok) return { parts: read.design.parts, wires: read.design.wires };
  return written && !written.isThere ? own : null;
}

/** Asks the system; a browser that does not tell leaves what this window copied. Says why there is nothing. */
export async function readClipboard(): Promise<Fragment | null> {
  const text = await navigator.clipboard?.readText?.().catch(() => null);
  const isTold = typeof text === "string";
  const fragment = isTold ? fragmentIn(text) : remembered();
  if (!fragment) useApp.getState().notify(isTold ? NO_PARTS : NOT_TOLD, "warning");
  return fragment;
}

export const NO_PARTS = "The clipboard holds no parts to paste.";
const NOT_TOLD = "This browser does not let the menu read the clipboard. Paste with the keys of your system.";
