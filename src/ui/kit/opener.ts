/** Where the focus goes when a dialog closes: back to what opened it, also over a menu or another dialog between. */
let opener: HTMLElement | null = null;

/** To be told before a dialog takes the focus. */
export function rememberOpener(): void {
  const asker = document.activeElement;
  if (!(asker instanceof HTMLElement) || asker === document.body) return;
  // A dialog that makes way for the next leaves its own opener to it.
  if (asker.closest("[role=dialog]")) return;
  opener = triggerOf(asker) ?? asker;
}

/** To be told when a dialog has gone. */
export function returnToOpener(): void {
  if (document.querySelector("[role=dialog]")) return;
  if (opener?.isConnected) opener.focus();
  opener = null;
}

/** Of an entry of a menu, which is gone as soon as it is chosen, the button that opened the menu. */
function triggerOf(asker: HTMLElement): HTMLElement | null {
  const id = asker.closest("[role=menu]")?.getAttribute("aria-labelledby");
  return id ? document.getElementById(id) : null;
}
