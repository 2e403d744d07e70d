import { pickFile } from "./pickFile.ts";

/** Larger than any text that is asked for here [bytes]. */
const MOST_BYTES = 2_000_000;

/** Asks for a file and yields its text; null when none was chosen or it could not be read. */
export async function pickTextFile(): Promise<string | null> {
  const file = await pickFile();
  if (!file || file.size > MOST_BYTES) return null;
  return file.text().catch(() => null);
}
