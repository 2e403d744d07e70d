/** Why the browser did not store, in words for the user. */
export function storageTrouble(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  const why =
    name === "QuotaExceededError"
      ? "the browser's storage for this page is full"
      : "this browser does not let the page store anything (a private window, or storage switched off)";
  return `Not saved: ${why}. Your work goes on in this window only; download the file before you close it.`;
}
