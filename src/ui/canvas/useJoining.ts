/**
 * Joining by hand, also where the drawing is only a plan, as long as ports can be told apart. A press within the field of a port belongs to that port, whatever
 * is drawn there: the nearest wins. Let go without moving it is a tap; moved, it pulls a wire to a port, to a card, or
 * to an empty place, which asks for a part.
 */
import { type RefObject, useEffect } from "react";
import type { PortRef } from "../../design/design.ts";
import { isSamePort } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";
import { joinPorts, joinRefusal, joinToPart, offerAt, tapPort } from "./joining.ts";
import type { Point } from "./layout.ts";
import { cardAt, FIELD_PX, nearestPort } from "./ports.ts";
import { setNear, setPulled } from "./pulled.ts";
import { boxIn } from "./rooms.ts";
import { canvasView } from "./view.ts";
import { takesWire, type WireTarget, wireTargetAt } from "./wireTarget.ts";

/** A press that moves less far than this is a tap [px on the screen]. */
const TAP_PX = 6;
/** Of a card's width, what the fields of its ports may take on each side: the rest is for moving the card. */
const CARD_SHARE = 0.2;
/** Below it the fields of ports would leave hardly anything of the cards, nor of the canvas between them. */
const LEAST_PORT_ZOOM = 0.3;

type Gesture = {
  readonly pointer: number;
  readonly from: PortRef;
  readonly start: Point;
  readonly down: Point;
  readonly fieldPx: number;
  isPulling: boolean;
};

export function useJoining(frame: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const canvas = frame.current;
    if (!canvas) return;
    let gesture: Gesture | null = null;
    /** The press was a port's: what the browser makes of it afterwards is nobody else's. */
    let isOurs = false;

    const onDown = (event: PointerEvent) => {
      isOurs = false;
      if (!isOnDiagram(event) || event.button !== 0 || !event.isPrimary) return;
      const port = portUnder(event);
      if (!port) return;
      isOurs = true;
      event.stopPropagation();
      const { fieldPx } = fieldOf(event);
      const start = { x: port.x, y: port.y };
      gesture = {
        pointer: event.pointerId,
        from: port.ref,
        start,
        down: clientOf(event),
        fieldPx,
        isPulling: false,
      };
    };

    const onMove = (event: PointerEvent) => {
      if (!gesture) {
        const near = event.pointerType !== "touch" && isOnDiagram(event) ? portUnder(event) : undefined;
        setNear(near ? { x: near.x, y: near.y } : null);
        canvas.toggleAttribute("data-at-port", near !== undefined);
        return;
      }
      if (event.pointerId !== gesture.pointer) return;
      const { clientX, clientY } = event;
      const distance = Math.hypot(clientX - gesture.down.x, clientY - gesture.down.y);
      if (!gesture.isPulling && distance < TAP_PX) return;
      if (!gesture.isPulling) {
        gesture.isPulling = true;
        useApp.getState().setConnecting(gesture.from);
      } else if (!useApp.getState().connecting) {
        // Given up by a key.
        gesture = null;
        setPulled(null);
        return;
      }
      pull(gesture, clientOf(event));
    };

    const onUp = (event: PointerEvent) => {
      if (!gesture || event.pointerId !== gesture.pointer) return;
      const { from, isPulling } = gesture;
      const ended = gesture;
      gesture = null;
      setPulled(null);
      setNear(null);
      if (event.type === "pointercancel") {
        if (isPulling) useApp.getState().setConnecting(null);
        return;
      }
      if (!isPulling) return tapPort(from);
      useApp.getState().setConnecting(null);
      letGo(ended, clientOf(event));
    };

    /** A long press asks for the menu: it is no tap any more. */
    const onMenu = () => {
      if (gesture?.isPulling) useApp.getState().setConnecting(null);
      gesture = null;
      setPulled(null);
    };

    const swallow = (event: Event) => {
      if (!isOurs) return;
      event.stopPropagation();
      if (event.cancelable) event.preventDefault();
      if (event.type === "click") isOurs = false;
    };

    const capture = { capture: true, passive: false };
    canvas.addEventListener("pointerdown", onDown, capture);
    canvas.addEventListener("contextmenu", onMenu, capture);
    for (const type of SWALLOWED) canvas.addEventListener(type, swallow, capture);
    window.addEventListener("pointermove", onMove);
    window.addEventListener("pointerup", onUp);
    window.addEventListener("pointercancel", onUp);
    return () => {
      canvas.removeEventListener("pointerdown", onDown, capture);
      canvas.removeEventListener("contextmenu", onMenu, capture);
      for (const type of SWALLOWED) canvas.removeEventListener(type, swallow, capture);
      window.removeEventListener("pointermove", onMove);
      window.removeEventListener("pointerup", onUp);
      window.removeEventListener("pointercancel", onUp);
    };
  }, [frame]);
}

const SWALLOWED = ["mousedown", "touchstart", "click", "dblclick"] as const;

function clientOf({ clientX, clientY }: PointerEvent): Point {
  return { x: clientX, y: clientY };
}

/** Bars and lists over the canvas are no part of the drawing. */
function isOnDiagram({ target }: Event): boolean {
  return (
    target instanceof Element &&
    target.closest(".react-flow") !== null &&
    !target.closest(".react-flow__panel")
  );
}

function fieldOf(event: PointerEvent): { readonly fieldPx: number } {
  return { fieldPx: event.pointerType === "touch" ? FIELD_PX.touch : FIELD_PX.mouse };
}

function zoomNow(): number {
  const view = canvasView();
  if (!view) return 1;
  const [a, b] = [view.toCanvas({ x: 0, y: 0 }), view.toCanvas({ x: 100, y: 0 })];
  return 100 / Math.max(1e-6, b.x - a.x);
}

/** The port that a press belongs to; over a card only near its own edge, or the card could not be moved any more. */
function portUnder(event: PointerEvent) {
  const view = canvasView();
  const { design, preview } = useApp.getState();
  const zoom = zoomNow();
  if (!view || preview || zoom < LEAST_PORT_ZOOM) return undefined;
  const at = view.toCanvas(clientOf(event));
  const port = nearestPort(design, at, { ...fieldOf(event), zoom });
  const card = port && cardAt(design, at);
  if (!port || card === undefined) return port;
  const box = boxIn(design, card);
  const share = (box?.width ?? 0) * CARD_SHARE;
  return card === port.ref[0] && Math.abs(port.x - at.x) <= share ? port : undefined;
}

function targetOf({ from, fieldPx }: Pick<Gesture, "from" | "fieldPx">, at: Point): WireTarget {
  return wireTargetAt(useApp.getState().design, from, at, { fieldPx, zoom: zoomNow() });
}

function pull(gesture: Gesture, client: Point): void {
  const view = canvasView();
  if (!view) return;
  const { from, start } = gesture;
  const at = view.toCanvas(client);
  const target = targetOf(gesture, at);
  const port = target && "port" in target && !isSamePort(target.port.ref, from) ? target.port : null;
  const card = target && "card" in target && target.card !== from[0] ? target.card : null;
  const { design } = useApp.getState();
  const reason = port ? joinRefusal(from, port.ref) : null;
  const fits = port ? reason === null : card !== null && takesWire(design, from, card);
  const status = port || card !== null ? (fits ? "valid" : "invalid") : "open";
  const end = port ? { x: port.x, y: port.y } : at;
  setPulled({ from, start, end, status, reason, card: card === null ? null : (boxIn(design, card) ?? null) });
  setNear(port ? end : null);
}

function letGo(gesture: Gesture, client: Point): void {
  const view = canvasView();
  if (!view?.covers(client)) return;
  const { from } = gesture;
  const target = targetOf(gesture, view.toCanvas(client));
  if (!target) offerAt(from, client);
  else if ("card" in target) joinToPart(from, target.card, client);
  else if (!isSamePort(target.port.ref, from)) {
    const reason = joinRefusal(from, target.port.ref);
    if (reason) useApp.getState().notify(reason, "warning");
    else joinPorts(from, target.port.ref);
  }
}
