/** Whether the browser keeps the page, and whether a new version waits. */
import { create } from "zustand";

type Keeping = {
  /** Whether the page opens without network: not (yet), from the browser's storage, or as a file from the disk. */
  readonly kept: "no" | "stored" | "file";
  /** A new version: none, one that waits, or one that another window has taken and that this one has not loaded. */
  readonly newVersion: "none" | "waits" | "taken elsewhere";
};

export const useOfflineState = create<Keeping>(() => ({
  kept: window.location.protocol === "file:" ? "file" : "no",
  newVersion: "none",
}));
