/** Larger than any text that is asked for here [bytes]. */
const MOST_BYTES = 2_000_000;

/** Asks for a file and yields its text; null when none was chosen or it could not be read. */
export function pickTextFile(): Promise<string | null> {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = ".json,application/json";
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      if (!file || file.size > MOST_BYTES) resolve(null);
      else file.text().then(resolve, () => resolve(null));
    });
    input.addEventListener("cancel", () => resolve(null));
    input.click();
  });
}
