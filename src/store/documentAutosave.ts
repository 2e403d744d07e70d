/** Ties the open design to the storage: saves as it changes and when the page goes away, and hears other windows. */
import type { Design } from "../design/design.ts";
import { useDocuments } from "./documents.ts";

export type OpenDesign = {
  /** Calls the listener with every new open design; returns how to stop. */
  readonly subscribe: (listener: (design: Design) => void) => () => void;
  /** Gives the open design another title, when it went on as a copy. */
  readonly retitle: (title: string) => void;
};

/** Call once when the app starts; returns how to let go. */
export function attachAutosave(open: OpenDesign, store: typeof useDocuments = useDocuments): () => void {
  const letGo = new AbortController();
  const { signal } = letGo;
  const documents = () => store.getState();

  void documents().pickUp();
  const stopDesign = open.subscribe((design) => documents().changed(design));

  // A tablet may kill a hidden tab without a further word: hidden is the last safe moment.
  document.addEventListener(
    "visibilitychange",
    () => document.visibilityState === "hidden" && void documents().flush(),
    { signal },
  );
  // A page that is left or closed gets no answer from the storage any more.
  window.addEventListener(
    "pagehide",
    () => {
      documents().part();
      void documents().flush();
    },
    { signal },
  );
  window.addEventListener(
    "beforeunload",
    (event) => {
      // The browser asks whether to leave: here a design would be lost.
      const { state, list } = documents();
      if (state === "unavailable" || list.some((head) => head.onlyHere)) event.preventDefault();
    },
    { signal },
  );

  const channel = new BroadcastChannel("downlead-designs");
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    if (isSaved(data)) void documents().heard(data.id, data.revision);
  };
  const stopDocuments = store.subscribe((now, before) => {
    if (now.newTitle !== null) {
      store.setState({ newTitle: null });
      open.retitle(now.newTitle);
    }
    if (now.current !== null && now.state === "saved" && now.revision !== before.revision) {
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
