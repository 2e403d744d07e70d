/** The conditions as the page sees them: how far they are judged, and for which document that holds. */
import { create } from "zustand";
import type { Design } from "../design/design.ts";
import { useApp } from "./app.ts";
import type { ConditionsSearch } from "./searchConditions.ts";
import { type SearchHandle, startSearch } from "./searchRun.ts";

type ConditionsState = {
  readonly status: "idle" | "running" | "done" | "failed";
  /** The document that is judged; what is known no longer holds once another is at work. */
  readonly document: Design | null;
  readonly progress: ConditionsSearch | null;
  readonly problem: string | null;
  /** Judges the document, unless that is done or under way. */
  readonly start: () => void;
  readonly stop: () => void;
};

const NOTHING = { status: "idle", document: null, progress: null, problem: null } as const;

export const useConditions = create<ConditionsState>()((set, get) => {
  let handle: SearchHandle | null = null;
  return {
    ...NOTHING,
    start: () => {
      const { design: document } = useApp.getState();
      const { status } = get();
      if (document === get().document && (status === "running" || status === "done")) return;
      handle?.stop();
      set({ ...NOTHING, status: "running", document });
      handle = startSearch("conditions", { design: document }, (event) => {
        if (event.type === "failed") set({ status: "failed", problem: event.reason });
        else set({ progress: event.progress, ...(event.type === "done" ? { status: "done" as const } : {}) });
      });
    },
    stop: () => {
      handle?.stop();
      handle = null;
      if (get().status === "running") set(NOTHING);
    },
  };
});
