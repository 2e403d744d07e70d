/** The small list that opens on the canvas, at the end of a pulled wire or at the port that was asked about. */
import { Popover } from "radix-ui";
import { useMemo, useRef } from "react";
import type { PortRef } from "../../design/design.ts";
import { partById, portOf } from "../../design/lookup.ts";
import { fitsAt } from "../../findings/fitting/fits.ts";
import { CATALOGUE, kindOf } from "../../parts/catalogue.ts";
import { FAMILY_NAMES } from "../../parts/contract.ts";
import { attachmentWords } from "../../sentences/fitWords.ts";
import { useApp } from "../../store/app.ts";
import { addConnected, addKind, openPartsFor } from "./adding.ts";
import { CableForm } from "./CableForm.tsx";
import { joinPorts } from "./joining.ts";
import { closeOffer, giveUpOffer, type PartOffer, useOffer } from "./offer.ts";
import { PickList, type PickOption } from "./PickList.tsx";
import { RenameForm } from "./RenameForm.tsx";
import { focusSelected } from "./selectedFocus.ts";
import { canvasView } from "./view.ts";

export function OfferPopover() {
  const { offer, at } = useOffer();
  const anchor = useRef({ getBoundingClientRect: () => new DOMRect(0, 0, 0, 0) });
  anchor.current.getBoundingClientRect = () => {
    const { x, y } = canvasView()?.toWindow(at) ?? at;
    return new DOMRect(x, y, 0, 0);
  };
  const isOpen = offer !== null;
  return (
    <Popover.Root open={isOpen} onOpenChange={(open) => !open && closeOffer()}>
      <Popover.Anchor virtualRef={anchor} />
      {offer && (
        <Popover.Portal>
          <Popover.Content
            className="offer"
            aria-label={titleOf(offer)}
            side={hasRoomBeside(anchor.current.getBoundingClientRect().x) ? "right" : "bottom"}
            align="start"
            sideOffset={8}
            collisionPadding={8}
            updatePositionStrategy="always"
            // A field takes back what was typed into it first.
            onEscapeKeyDown={(event) => isIn(".offer", event.target) && event.preventDefault()}
            onKeyDown={({ key }) => key === "Escape" && giveUpOffer()}
            onOpenAutoFocus={(event) => {
              const { currentTarget: content } = event;
              const field = content instanceof Element ? fieldIn(content, offer.about === "name") : null;
              event.preventDefault();
              field?.focus();
              if (field instanceof HTMLInputElement) field.select();
            }}
            onCloseAutoFocus={(event) => {
              event.preventDefault();
              focusSelected();
            }}
          >
            <OfferBody key={JSON.stringify(offer)} offer={offer} />
          </Popover.Content>
        </Popover.Portal>
      )}
    </Popover.Root>
  );
}

/** The widest of them, with its distances [px]. */
const OFFER_PX = 356;

/** Below there is always the whole width of the window; beside it would be cut off in a narrow one. */
function hasRoomBeside(x: number): boolean {
  return Math.max(x, window.innerWidth - x) >= OFFER_PX;
}

function isIn(selector: string, target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(selector) !== null;
}

/** What waits for typing; on a touch screen rather the list itself, so that no keyboard comes up over it. */
function fieldIn(content: Element, isForTyping: boolean): HTMLElement | null {
  const isTouch = window.matchMedia?.("(pointer: coarse)").matches ?? false;
  const field = content.querySelector<HTMLElement>("input");
  return (isTouch && !isForTyping) || !field ? (content instanceof HTMLElement ? content : null) : field;
}

function OfferBody({ offer }: { readonly offer: PartOffer }) {
  switch (offer.about) {
    case "parts":
      return <PartList from={offer.from} />;
    case "ports":
      return <PortList of={offer.of} others={offer.others} />;
    case "partners":
      return <PartnerList from={offer.from} to={offer.to} />;
    case "name":
      return <RenameForm part={offer.part} onDone={closeOffer} />;
    case "length":
      return <CableForm {...offer} onDone={closeOffer} />;
  }
}

function titleOf(offer: PartOffer): string {
  switch (offer.about) {
    case "parts":
      return `Add to ${portTitle(offer.from)}`;
    case "ports":
      return offer.others ? "Add a part, or go on from a free output" : "Add to which port?";
    case "partners":
      return `Connect ${portTitle(offer.from)} to…`;
    case "name":
      return "New name";
    case "length":
      return "Length and grade";
  }
}

/** "LNB: output out 2". */
export function portTitle([id, portId]: PortRef): string {
  const part = partById(useApp.getState().design, id);
  const port = part && portOf(part, portId);
  return `${part?.label ?? id}: ${port?.side === "in" ? "input" : "output"} ${port?.label ?? portId}`;
}

function PartList({ from }: { readonly from: PortRef }) {
  const evaluation = useApp((s) => s.evaluation);
  const usual = useMemo(() => fitsAt(evaluation, from), [evaluation, from]);
  const choices = (query: string) => {
    const lengthM = lengthIn(query);
    const fits = lengthM === undefined ? usual : fitsAt(evaluation, from, lengthM);
    return fits.map((fit, i) => ({
      key: `${i}`,
      words: attachmentWords(fit),
      also: kindOf(fit.kind)?.keywords ?? [],
      value: fit,
    }));
  };
  return (
    <>
      <p className="offer-title">{titleOf({ about: "parts", from })}</p>
      <PickList
        label="Part to add"
        choices={choices}
        none="No part that fits this port matches."
        isNumbered
        onPick={(attachment) => {
          closeOffer();
          addConnected(from, attachment);
        }}
      />
    </>
  );
}

/** A number among the words typed: as many metres of cable. */
function lengthIn(query: string): number | undefined {
  const [text] = /\d+(?:[.,]\d+)?/.exec(query) ?? [];
  return text === undefined ? undefined : Number(text.replace(",", "."));
}

type PortChoice = { readonly port: PortRef } | { readonly kind: string };

function PortList({ of, others }: Omit<Extract<PartOffer, { readonly about: "ports" }>, "about">) {
  const choiceOf = (port: PortRef): PickOption<PortChoice> => {
    return { key: port.join("/"), words: portTitle(port), value: { port } };
  };
  const kinds = CATALOGUE.map((kind): PickOption<PortChoice> => {
    const about = FAMILY_NAMES[kind.family];
    return { key: kind.kind, words: kind.name, about, also: kind.keywords, value: { kind: kind.kind } };
  });
  const [starts, rest] = [kinds.filter((k) => isStart(k.key)), kinds.filter((k) => !isStart(k.key))];
  const offer: PartOffer = { about: "ports", of, others };
  const ports = of.map(choiceOf);
  return (
    <>
      <p className="offer-title">{titleOf(offer)}</p>
      <PickList
        label={others ? "Part or output" : "Port"}
        choices={others ? [...ports, ...starts, ...others.map(choiceOf), ...rest] : ports}
        none="No part matches."
        isNumbered
        onPick={(choice) => {
          closeOffer();
          if ("port" in choice) openPartsFor(choice.port);
          else addKind(choice.kind);
        }}
      />
    </>
  );
}

/** A reception begins at a dish or an aerial. */
function isStart(key: string): boolean {
  const job = kindOf(key)?.trade.job;
  return job === "dish" || job === "aerial";
}

function PartnerList({ from, to }: { readonly from: PortRef; readonly to: readonly PortRef[] }) {
  return (
    <>
      <p className="offer-title">{titleOf({ about: "partners", from, to })}</p>
      <PickList
        label="Port to connect to"
        choices={to.map((ref) => ({ key: ref.join("/"), words: portTitle(ref), value: ref }))}
        none="No free port fits this one."
        isNumbered
        onPick={(ref) => {
          closeOffer();
          joinPorts(from, ref);
        }}
      />
    </>
  );
}
