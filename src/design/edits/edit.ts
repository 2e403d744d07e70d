/** What an edit yields: a new document, or the reason why not. The caller applies it and owns undo. */
import type { Design, Part } from "../design.ts";

export type Edit =
  | {
      readonly ok: true;
      /** The same object when the edit changes nothing. */
      readonly design: Design;
      /** What happened beside the thing asked for, one sentence each. */
      readonly notes: readonly string[];
    }
  | Refusal;

export type Refusal = { readonly ok: false; readonly reason: string };

export function done(design: Design, notes: readonly string[] = []): Edit & { ok: true } {
  return { ok: true, design, notes };
}

export function refuse(reason: string): Refusal {
  return { ok: false, reason };
}

export function withPart(design: Design, changed: Part): Design {
  return { ...design, parts: design.parts.map((part) => (part.id === changed.id ? changed : part)) };
}
