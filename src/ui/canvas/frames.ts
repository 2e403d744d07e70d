/**
 * What a part looks like on the canvas and how large it is, known before anything is drawn: the canvas needs it to
 * cull, to route wires and to arrange, and measuring a thousand cards in the browser is what is slow.
 *
 * A card shows what leaves it: the strip of a wire is docked to the output where the wire begins. A run of cable is
 * a pill on its wire, a receiver a tile with its result. Outputs that the kind declares alike share one strip.
 */
import type { Design, Part } from "../../design/design.ts";
import { portsOf } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { PartKind, Port } from "../../parts/contract.ts";
import { type Box, GRID_PX, type Point, type Size } from "./layout.ts";
import { linesOf } from "./lettering.ts";

export type Look = "card" | "pill" | "tile";

/** A strip docked to a part, from the part's top left corner [px]. */
export type DockedStrip = Box & {
  /** The port at whose wire it looks; of outputs alike the first one that is connected. */
  readonly port: string;
  readonly side: Port["side"];
  /** How many outputs it speaks for. */
  readonly outputs: number;
};

export type Frame = Size & {
  readonly look: Look;
  /** Where each port lies, from the top left corner. */
  readonly ports: ReadonlyMap<string, Point>;
  readonly strips: readonly DockedStrip[];
  /** Lines that the name of a tile takes. */
  readonly nameLines: number;
};

export const CARD_WIDTH_PX = 144;
export const TILE_WIDTH_PX = 128;
export const PILL: Size = { width: 56, height: 24 };
export const STRIP: Size = { width: 136, height: 60 };
const INSET_PX = 4;
/** Room of a docked strip with the gap to the next, and of a port without one. */
export const STRIP_PITCH_PX = 64;
export const PORT_PITCH_PX = 24;
/** The first row of ports begins here: half a step off the grid once a port is centred in it. */
const FIRST_ROW_PX = 40;
const STRIP_PORT_PX = 28;
const FREE_PORT_PX = 12;

/** A part with more outputs shows none of their strips: they stand at the far end. */
const MOST_DOCKED = 5;

export const NAME_SIZE_PX = 12.5;
/** Room for the name beside the symbol of a card, and beside the mark of a tile [px]. */
export const CARD_NAME_PX = 98;
export const TILE_NAME_PX = 84;
const MOST_TILE_LINES = 3;

/** How one part looks in a design. The same object while nothing about its size or its ports changed. */
export function frameOf(design: Design, part: Part): Frame {
  const links = linksOf(design).get(part.id) ?? NO_LINKS;
  let byKey = frames.get(part.options);
  if (!byKey) {
    byKey = new Map();
    frames.set(part.options, byKey);
  }
  const kind = kindOf(part.kind);
  const lines = kind && lookOf(kind, part) === "tile" ? tileLines(part.label) : 0;
  const key = `${part.kind} ${lines} ${links.key}`;
  let frame = byKey.get(key);
  if (!frame) {
    frame = made(part, kind, links, lines);
    byKey.set(key, frame);
  }
  return frame;
}

const frames = new WeakMap<Part["options"], Map<string, Frame>>();

function tileLines(label: string): number {
  return Math.min(MOST_TILE_LINES, linesOf(label, { widthPx: TILE_NAME_PX, sizePx: NAME_SIZE_PX }));
}

function lookOf(kind: PartKind, part: Part): Look {
  if (kind.onWire?.(part.options) !== undefined) return "pill";
  return kind.reception ? "tile" : "card";
}

function made(part: Part, kind: PartKind | undefined, links: Links, lines: number): Frame {
  const ports = portsOf(part);
  const look = kind ? lookOf(kind, part) : "card";
  if (look === "pill") return pill(ports);
  return look === "tile" ? tile(ports, links, lines) : card(ports, kind, part, links);
}

function pill(ports: readonly Port[]): Frame {
  const y = PILL.height / 2;
  return {
    look: "pill",
    ...PILL,
    ports: new Map(ports.map((p) => [p.id, { x: p.side === "in" ? 0 : PILL.width, y }])),
    strips: [],
    nameLines: 0,
  };
}

function tile(ports: readonly Port[], links: Links, lines: number): Frame {
  const inputs = ports.filter((p) => p.side === "in");
  const own = up(Math.max(32 + 15 * lines, PORT_PITCH_PX * inputs.length));
  const first = halfStep(own / 2 - (PORT_PITCH_PX / 2) * (inputs.length - 1));
  const places = new Map<string, Point>();
  inputs.forEach((p, i) => {
    places.set(p.id, { x: 0, y: first + i * PORT_PITCH_PX });
  });
  for (const p of ports) if (p.side === "out") places.set(p.id, { x: TILE_WIDTH_PX, y: first });
  const width = TILE_WIDTH_PX - 2 * INSET_PX;
  const strips = inputs
    .filter((p) => links.arriving.has(p.id))
    .map((p, i) => ({
      port: p.id,
      side: "in" as const,
      outputs: 1,
      x: INSET_PX,
      y: own + i * STRIP_PITCH_PX,
      width,
      height: STRIP.height,
    }));
  return {
    look: "tile",
    width: TILE_WIDTH_PX,
    height: own + strips.length * STRIP_PITCH_PX,
    ports: places,
    strips,
    nameLines: lines,
  };
}

function card(ports: readonly Port[], kind: PartKind | undefined, part: Part, links: Links): Frame {
  const places = new Map<string, Point>();
  const strips: DockedStrip[] = [];
  const outputs = ports.filter((p) => p.side === "out");
  const inputs = ports.filter((p) => p.side === "in");
  let top = FIRST_ROW_PX;
  const put = (port: Port, y: number) => places.set(port.id, { x: CARD_WIDTH_PX, y });
  const docks = outputs.length <= MOST_DOCKED;
  const groups = kind && areAlike(outputs, kind, part) ? [outputs] : outputs.map((p) => [p]);
  const isBare = !outputs.some((p) => links.leaving.has(p.id));
  groups.forEach((group, g) => {
    // A part that feeds nothing yet shows what it would deliver, and does not grow with its first wire.
    const shown = group.find((p) => links.leaving.has(p.id)) ?? (isBare && g === 0 ? group[0] : undefined);
    const hasStrip = docks && shown !== undefined;
    if (hasStrip) {
      const [only] = group;
      if (group.length === 1 && only) put(only, top + STRIP_PORT_PX);
      else
        group.forEach((p, i) => {
          put(p, top + FREE_PORT_PX + i * PORT_PITCH_PX);
        });
      strips.push({
        port: shown.id,
        side: "out",
        outputs: group.length,
        x: INSET_PX,
        y: top - 2,
        ...STRIP,
      });
      top += Math.max(STRIP_PITCH_PX, PORT_PITCH_PX * group.length);
      return;
    }
    for (const p of group) {
      put(p, top + FREE_PORT_PX);
      top += PORT_PITCH_PX;
    }
  });
  const [onlyIn] = inputs;
  if (inputs.length === 1 && onlyIn) {
    places.set(onlyIn.id, { x: 0, y: FIRST_ROW_PX + (strips.length > 0 ? STRIP_PORT_PX : FREE_PORT_PX) });
  } else
    inputs.forEach((p, i) => {
      places.set(p.id, { x: 0, y: FIRST_ROW_PX + FREE_PORT_PX + i * PORT_PITCH_PX });
    });
  const bottom = Math.max(top, FIRST_ROW_PX + PORT_PITCH_PX * Math.max(1, inputs.length));
  return { look: "card", width: CARD_WIDTH_PX, height: bottom, ports: places, strips, nameLines: 2 };
}

/** By what the kind declares, never by what they carry now: else ports would jump while a design is drawn. */
function areAlike(outputs: readonly Port[], kind: PartKind, part: Part): boolean {
  if (outputs.length < 2 || !outputs.every((p) => p.role === "leg" || p.role === "output")) return false;
  return (kind.power(part.options).switches ?? []).length === 0;
}

const up = (px: number) => Math.ceil(px / GRID_PX) * GRID_PX;
const halfStep = (px: number) => Math.floor(px / GRID_PX) * GRID_PX + GRID_PX / 2;

/** What of the wiring decides on the look of a part. */
type Links = {
  readonly key: string;
  /** Outputs with a wire. */
  readonly leaving: ReadonlySet<string>;
  /** Inputs whose wire has no strip where it begins. */
  readonly arriving: ReadonlySet<string>;
};

const NO_LINKS: Links = { key: "", leaving: new Set(), arriving: new Set() };
const known = new WeakMap<Design["wires"], { parts: Design["parts"]; links: ReadonlyMap<string, Links> }>();

/** Worked out once for each design; moving a card does not change the wiring but may change the list of parts. */
function linksOf(design: Design): ReadonlyMap<string, Links> {
  const last = known.get(design.wires);
  if (last?.parts === design.parts) return last.links;
  const parts = new Map(design.parts.map((p) => [p.id, p]));
  const sets = new Map<string, { leaving: Set<string>; arriving: Set<string> }>();
  const of = (id: string) => {
    let set = sets.get(id);
    if (!set) {
      set = { leaving: new Set(), arriving: new Set() };
      sets.set(id, set);
    }
    return set;
  };
  for (const { from, to } of design.wires) {
    of(from[0]).leaving.add(from[1]);
    const source = parts.get(from[0]);
    if (source && !docksAtOutputs(source)) of(to[0]).arriving.add(to[1]);
  }
  const links = new Map<string, Links>();
  for (const [id, { leaving, arriving }] of sets) {
    links.set(id, {
      key: `${[...leaving].sort().join(",")}|${[...arriving].sort().join(",")}`,
      leaving,
      arriving,
    });
  }
  known.set(design.wires, { parts: design.parts, links });
  return links;
}

/** Whether the wires that leave a part have their strips there. */
export function docksAtOutputs(part: Part): boolean {
  const kind = kindOf(part.kind);
  if (!kind || lookOf(kind, part) !== "card") return false;
  return portsOf(part).filter((p) => p.side === "out").length <= MOST_DOCKED;
}
