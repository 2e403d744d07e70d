/** The case that is being worked on, and where the meter hangs. The document is not touched by any of it. */
import { create } from "zustand";
import { crc32 } from "../design/crc32.ts";
import type { PartId, PortRef } from "../design/design.ts";
import { writeDesign } from "../design/file.ts";
import type { FaultType } from "../remedies/faults/fault.ts";
import type { Quantity } from "../remedies/faults/reading.ts";
import type { RequestChoice } from "../remedies/faults/requestChoice.ts";
import type { OpenedCase } from "../remedies/training/case.ts";

export type PracticeSession = {
  readonly opened: OpenedCase;
  /** Under which its progress is kept. */
  readonly key: string;
  /** Fragment of an address that opens the same case. */
  readonly fragment: string;
};

export type PracticeState = {
  readonly session: PracticeSession | null;
  readonly place: PortRef | null;
  readonly quantity: Quantity;
  /** What the receivers are made to ask for while measuring; null: what they ask for anyway. */
  readonly asked: RequestChoice | null;
  /** Whether the meter shows: only after it was asked to, as each look counts. */
  readonly isMeasured: boolean;
  readonly suspect: PartId | null;
  readonly suspectedType: FaultType | null;
  readonly open: (session: PracticeSession) => void;
  readonly close: () => void;
};

const AT_REST = {
  place: null,
  quantity: "level",
  asked: null,
  isMeasured: false,
  suspect: null,
  suspectedType: null,
} as const;

export const usePractice = create<PracticeState>()((set) => ({
  session: null,
  ...AT_REST,
  open: (session) => set({ session, ...AT_REST }),
  close: () => set({ session: null, ...AT_REST }),
}));

/** A guided case by its name; a random one by its seed and by the design that it was made from. */
export function progressKey({ case: chosen, design }: OpenedCase): string {
  if (chosen.design !== "") return chosen.id;
  // The full form is the same in every edition: progress is found again.
  const mark = crc32(new TextEncoder().encode(writeDesign(design, { full: true })));
  return `${chosen.id}-${mark.toString(16)}`;
}
