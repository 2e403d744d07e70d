/** Levelling all outlets as the page sees it: how far it is, and the best found so far. */
import { create } from "zustand";
import type { Design } from "../design/design.ts";
import type { Aim } from "../remedies/balance/aim.ts";
import type { Balance } from "../remedies/balance/balance.ts";
import { useApp } from "./app.ts";
import { type SearchHandle, startSearch } from "./searchRun.ts";
import { withSharedObjects } from "./sharedObjects.ts";

type BalanceState = {
  readonly status: "idle" | "running" | "done" | "stopped" | "failed";
  /** The document that it began with. */
  readonly document: Design | null;
  readonly best: Balance | null;
  readonly problem: string | null;
  readonly start: (aim: Aim) => void;
  readonly stop: () => void;
  readonly clear: () => void;
};

const NOTHING = { status: "idle", document: null, best: null, problem: null } as const;

export const useBalance = create<BalanceState>()((set, get) => {
  let handle: SearchHandle | null = null;
  return {
    ...NOTHING,
    start: (aim) => {
      handle?.stop();
      useApp.getState().closePreview();
      const { design: document } = useApp.getState();
      set({ ...NOTHING, status: "running", document });
      handle = startSearch("balance", { design: document, aim }, (event) => {
        if (event.type === "failed") set({ status: "failed", problem: event.reason });
        else
          set({
            status: event.type === "done" ? "done" : "running",
            best: { ...event.progress, design: withSharedObjects(event.progress.design, document) },
          });
      });
    },
    stop: () => {
      handle?.stop();
      if (get().status === "running") set({ status: "stopped" });
    },
    clear: () => {
      handle?.stop();
      set(NOTHING);
    },
  };
});
