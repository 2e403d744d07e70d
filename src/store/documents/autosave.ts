/** Ties the open design to the storage: saves as it changes and when the page goes away, and hears other windows. */
import type { Design } from "../../design/design.ts";
import { closeDatabase, reopenDatabase } from "./database.ts";
import { useDocuments } from "./documents.ts";
import type { History } from "./history.ts";

export type OpenDesign = {
  /** Calls the listener with every new open design; returns how to stop. */
  readonly subscribe: (listener: (design: Design) => void) => () => void;
  /** The open design with what undo and redo lead to. */
  readonly history: () => History;
  /** Lets the open design become what another window made of it. */
  readonly follow: (history: History) => void;
};

/** Call once when the app starts; returns how to let go. */
export function attachAutosave(open: OpenDesign, store: typeof useDocuments = useDocuments): () => void {
  const letGo = new AbortController();
  const { signal } = letGo;
  const documents = () => store.getState();

  void documents().pickUp();
  const stopDesign = open.subscribe((design) => documents().changed(design, open.history));

  // A tablet may kill a hidden tab without a further word: hidden is the last safe moment.
  document.addEventListener(
    "visibilitychange",
    () => {
      if (document.visibilityState !== "hidden") return;
      documents().part();
      void documents().flush();
    },
    { signal },
  );
  // A page that is left, closed or frozen gets no answer any more, and a database that it holds open, with a
  // transaction under way, keeps the next page waiting.
  const leave = () => {
    documents().part();
    closeDatabase();
  };
  window.addEventListener("pagehide", leave, { signal });
  document.addEventListener("freeze", leave, { signal });
  const comeBack = () => {
    reopenDatabase();
    void documents().flush();
    void documents().catchUp();
  };
  window.addEventListener("pageshow", (event) => event.persisted && comeBack(), { signal });
  document.addEventListener("resume", comeBack, { signal });
  window.addEventListener(
    "beforeunload",
    (event) => {
      // The browser asks whether to leave: here a design would be lost.
      if (documents().list.some((head) => head.onlyHere)) event.preventDefault();
    },
    { signal },
  );

  const channel = new BroadcastChannel("downlead-documents");
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    if (isSaved(data)) void documents().heard(data.id, data.revision);
  };
  const stopDocuments = store.subscribe((now, before) => {
    if (now.incoming !== null) {
      store.setState({ incoming: null });
      open.follow(now.incoming);
    }
    if (now.current !== null && now.revision !== null && now.revision !== before.revision) {
      channel.postMessage({ id: now.current, revision: now.revision });
    }
  });

  return () => {
    letGo.abort();
    stopDesign();
    stopDocuments();
    channel.close();
  };
}

function isSaved(data: unknown): data is { id: string; revision: number } {
  if (typeof data !== "object" || data === null) return false;
  const message: { id?: unknown; revision?: unknown } = data;
  return typeof message.id === "string" && typeof message.revision === "number";
}
