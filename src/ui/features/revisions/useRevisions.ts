import { useCallback, useEffect, useState } from "react";
import type { RevisionHead } from "../../../store/documents/documentStorage.ts";
import { useDocuments } from "../../../store/documents/documents.ts";

/**
 * Revisions of the open document, latest first; null until they have been read. Read again with every save, which may
 * have kept one, and once the storage works again; `reload` does it at any other time.
 */
export function useRevisions(): { readonly revisions: readonly RevisionHead[] | null; reload: () => void } {
  const document = useDocuments((s) => s.current);
  const saves = useDocuments((s) => s.revision);
  const isUnavailable = useDocuments((s) => s.state === "unavailable");
  const [revisions, setRevisions] = useState<readonly RevisionHead[] | null>(null);
  const [asked, setAsked] = useState(0);
  const reload = useCallback(() => setAsked((n) => n + 1), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what it is read again for is not read from.
  useEffect(() => {
    let isDue = true;
    if (document === null) setRevisions(null);
    else
      void useDocuments
        .getState()
        .revisions(document)
        .then((found) => isDue && setRevisions(found));
    return () => {
      isDue = false;
    };
  }, [document, saves, isUnavailable, asked]);
  return { revisions, reload };
}
