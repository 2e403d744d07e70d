/** The document: parts on a canvas and the wires between them. Immutable; edits make a new one. */

import type { Settings } from "./settings.ts";

export type PartId = string;
export type PortId = string;
export type PortRef = readonly [part: PartId, port: PortId];

export type Part = {
  readonly id: PartId;
  /** Key of the catalogue. */
  readonly kind: string;
  readonly label: string;
  /** Checked and complete by the kind's schema; defaults are filled in when a part is made or read. */
  readonly options: Readonly<Record<string, unknown>>;
  /** Top left corner on the canvas [px at zoom 1]. */
  readonly at: readonly [x: number, y: number];
};

/** A joint from an output port to an input port. A length of cable is a part, a wire has no loss. */
export type Wire = { readonly from: PortRef; readonly to: PortRef };

export type Design = {
  readonly title: string;
  /** One line that an example teaches; shown under the title. */
  readonly lesson?: string;
  /** Absent: the usual ones (`settingsOf`). */
  readonly settings?: Settings;
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  /** Name of the variant that parts and wires are; absent: nobody has named it (`activeName`). */
  readonly variant?: string;
  /** The other variants, which rest meanwhile. Never an empty list. */
  readonly variants?: readonly Variant[];
};

/** The same installation in another way: as built, plan A. It shares title and settings with the others. */
export type Variant = {
  readonly name: string;
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
};

/** What is drawn: of the design itself, or of a variant. */
export type DesignContent = Pick<Design, "parts" | "wires">;

export const EMPTY_DESIGN: Design = { title: "Untitled design", parts: [], wires: [] };

/** Name of a wire, from its ends: unique, since a port takes one wire. */
export function wireId(wire: Wire): string {
  return `${wire.from[0]}.${wire.from[1]}>${wire.to[0]}.${wire.to[1]}`;
}
