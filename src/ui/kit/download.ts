/** Hands a text to the user as a file. */
export function download(text: string, name: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  anchor.click();
  // The browser has taken the blob over by then; freeing it in the same turn would cancel the download.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A title as a file name: letters and digits of any script, the rest as hyphens. */
export function fileName(title: string): string {
  const name = title
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return name === "" ? "design" : name;
}
