/** The search for cures as the page sees it: how far it is, what is proved so far, and for which design it holds. */
import { create } from "zustand";
import type { Design, PartId } from "../design/design.ts";
import type { Finding } from "../findings/finding.ts";
import type { Proposal } from "../remedies/proposal.ts";
import type { Effort } from "../remedies/rank.ts";
import type { SearchProgress } from "../remedies/search.ts";
import { useApp } from "./app.ts";
import { usePrices } from "./prices.ts";
import { type SearchHandle, startSearch } from "./searchRun.ts";
import { withSharedObjects } from "./sharedObjects.ts";

export type CureStatus = "idle" | "running" | "done" | "stopped" | "failed";

/** What cures are wanted for. */
export type CureRequest = {
  /** One finding; absent: all that is wrong. */
  readonly target?: Finding;
  /** The document with a part already swapped, and what that is. A cure that swaps it again is none. */
  readonly changed?: {
    readonly design: Design;
    readonly title: string;
    readonly part: PartId;
    readonly kind: string;
  };
};

export type CuresState = {
  readonly status: CureStatus;
  readonly complaint: CureRequest;
  /** The document that the search began with; what is found no longer holds once another is at work. */
  readonly document: Design | null;
  readonly tried: number;
  /** Best first. */
  readonly proposals: readonly Proposal[];
  readonly problem: string | null;
  /** What the list is sorted by. */
  readonly effort: Effort;
  readonly sortBy: (effort: Effort) => void;
  readonly start: (complaint?: CureRequest) => void;
  readonly stop: () => void;
  readonly clear: () => void;
};

const NOTHING = {
  status: "idle",
  complaint: {},
  document: null,
  tried: 0,
  proposals: [],
  problem: null,
} as const;

export const useCures = create<CuresState>()((set, get) => {
  let handle: SearchHandle | null = null;

  return {
    ...NOTHING,
    effort: "all",
    sortBy: (effort) => set({ effort }),

    start: (complaint = {}) => {
      handle?.stop();
      // Findings of a preview are not those of the document.
      useApp.getState().closePreview();
      const { design: document } = useApp.getState();
      const design = complaint.changed?.design ?? document;
      set({ ...NOTHING, status: "running", complaint, document });
      const take = ({ tried, proposals }: SearchProgress) => {
        const known = new Map(get().proposals.map((p) => [p.id, p]));
        // A proposal that is known keeps its object: nobody looks at it again.
        const wanted = proposals.filter((p) => keepsSwap(p, complaint.changed));
        set({ tried, proposals: wanted.map((p) => known.get(p.id) ?? own(p, document)) });
      };
      const { target } = complaint;
      const { prices } = usePrices.getState();
      handle = startSearch("cures", { design, prices, ...(target ? { target } : {}) }, (event) => {
        if (event.type === "failed") set({ status: "failed", problem: event.reason });
        else take(event.progress);
        if (event.type === "done") set({ status: "done" });
      });
    },

    stop: () => {
      handle?.stop();
      handle = null;
      if (get().status === "running") set({ status: "stopped" });
    },

    clear: () => {
      handle?.stop();
      handle = null;
      set(NOTHING);
    },
  };
});

// What was found for one design is nothing to another that is opened.
useApp.subscribe((now, before) => {
  if (now.opened !== before.opened && useCures.getState().status !== "idle") useCures.getState().clear();
});

function keepsSwap({ design }: Proposal, changed: CureRequest["changed"]): boolean {
  return !changed || design.parts.some((p) => p.id === changed.part && p.kind === changed.kind);
}

function own(proposal: Proposal, document: Design): Proposal {
  return { ...proposal, design: withSharedObjects(proposal.design, document) };
}
