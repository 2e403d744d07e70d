/** The designs in this browser, all of them out to a download and back from it as new ones. */
import type { ArchivedDocument } from "./archive.ts";
import { useDocuments } from "./documents.ts";

/** Null where the storage does not hand them out. */
export async function everyDocument(): Promise<readonly ArchivedDocument[] | null> {
  const documents = useDocuments.getState();
  await documents.flush();
  await documents.refresh();
  const { list, state } = useDocuments.getState();
  if (state === "unavailable" && list.length === 0) return null;
  const all: ArchivedDocument[] = [];
  for (const { id, title, changed, parts } of list) {
    const text = await documents.text(id);
    if (text === null) return null;
    all.push({ title, changed, parts, text, revisions: [] });
  }
  return all;
}

/** Puts each on the shelf under an id of its own; yields how many, and why not the others. */
export async function takeInDocuments(
  documents: readonly ArchivedDocument[],
): Promise<{ readonly count: number; readonly problem: string | null }> {
  let count = 0;
  for (const { title, changed, parts, text } of documents) {
    const id = crypto.getRandomValues(new Uint32Array(3)).join("-");
    const problem = await useDocuments
      .getState()
      .restore({ head: { id, title, changed, parts, revision: 1 }, text });
    if (problem !== null) return { count, problem };
    count += 1;
  }
  return { count, problem: null };
}
