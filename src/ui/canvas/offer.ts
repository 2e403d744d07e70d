/** What the small list on the canvas is about: what to hang on a port, which port is meant, a new name, a cable. */
import { create } from "zustand";
import type { PartId, PortRef } from "../../design/design.ts";
import { useApp } from "../../store/app.ts";
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
  /** All that is changed while it is open comes under this key, as one step. */
  | { readonly about: "length"; readonly part: PartId; readonly step: string };

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

let forms = 0;

/** The form of a cable, with a step of its own each time that it is opened. */
export function cableOffer(part: PartId): PartOffer {
  forms += 1;
  return { about: "length", part, step: `cable form ${forms}` };
}

/** Closes it and leaves the design as it was before it was opened. */
export function giveUpOffer(): void {
  const { offer } = useOffer.getState();
  if (offer?.about === "length") useApp.getState().takeBack(offer.step);
  closeOffer();
}

/** The keys go on at the canvas at once, before what was chosen is drawn and takes the focus. */
export function closeOffer(): void {
  if (document.activeElement?.closest(".offer")) focusCanvas();
  useOffer.setState({ offer: null });
}
