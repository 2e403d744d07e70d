/** What the small list on the canvas is about: what to hang on a port, which port is meant, a new name, a cable. */
import { create } from "zustand";
import type { PartId, PortRef } from "../../design/design.ts";
import { focusCanvas } from "../kit/focusKeeper.ts";
import type { Point } from "./layout.ts";
import { canvasView } from "./view.ts";

export type PartOffer =
  /** Parts that fit a port. */
  | { readonly about: "parts"; readonly from: PortRef }
  /** Free ports to go on from: those of a part, and where that is not all, others and parts to begin with. */
  | { readonly about: "ports"; readonly of: readonly PortRef[]; readonly others: readonly PortRef[] | null }
  /** Ports of one part that a wire might be led to. */
  | { readonly about: "partners"; readonly from: PortRef; readonly to: readonly PortRef[] }
  | { readonly about: "name"; readonly part: PartId }
  | { readonly about: "length"; readonly part: PartId };

type OfferState = {
  readonly offer: PartOffer | null;
  /** Place on the canvas that it stands at, also while the view moves on. */
  readonly at: Point;
};

export const useOffer = create<OfferState>()(() => ({ offer: null, at: { x: 0, y: 0 } }));

/** `client`: place in the window. */
export function openOffer(offer: PartOffer, client: Point): void {
  useOffer.setState({ offer, at: canvasView()?.toCanvas(client) ?? client });
}

/** The keys go on at the canvas at once, before what was chosen is drawn and takes the focus. */
export function closeOffer(): void {
  if (document.activeElement?.closest(".offer")) focusCanvas();
  useOffer.setState({ offer: null });
}
