/** What receivers ask for while somebody measures: some faults show only while horizontal, or position 2, is asked for. */
import type { Design, Part } from "../../design/design.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Polarisation, SkyHalf } from "../../signal/carrier.ts";
import { optionsOf, withOptions } from "./change.ts";

export type RequestChoice = {
  readonly polarisation: Polarisation;
  readonly half: SkyHalf;
  /** Only where receivers give a position at all. */
  readonly position?: Position;
};

type Position = "1" | "2" | "3" | "4";
const POSITIONS: readonly Position[] = ["1", "2", "3", "4"];

/** The design with every switched receiver asking for this; null: as the design has it. */
export function askingFor(design: Design, asked: RequestChoice | null): Design {
  if (!asked) return design;
  return design.parts.reduce((changing, part) => {
    const request = requestFor(part, asked);
    return Object.keys(request).length > 0 ? withOptions(changing, part.id, request) : changing;
  }, design);
}

/** Requests worth trying beside those of the design: the extremes of polarisation and band, in every position. */
export function requestsOf(design: Design): readonly RequestChoice[] {
  const switched = design.parts.filter((part) => optionsOf(part, "asked polarisation").length > 0);
  if (switched.length === 0) return [];
  const inputs = design.parts.reduce(
    (most, part) =>
      (kindOf(part.kind)?.power(part.options).switches ?? [])
        .filter((s) => s.by === "position" && (s.heeds ?? "committed") === "committed")
        .reduce((higher, s) => Math.max(higher, s.positions), most),
    0,
  );
  const positions = POSITIONS.slice(0, inputs);
  const extremes: readonly RequestChoice[] = [
    { polarisation: "H", half: "high" },
    { polarisation: "V", half: "low" },
  ];
  if (positions.length === 0) return extremes;
  return positions.flatMap((position) => extremes.map((asked) => ({ ...asked, position })));
}

/** Stable name of a request, for keeping: "H/high/2"; "" for what the receivers ask for anyway. */
export function askedKey(asked: RequestChoice | null): string {
  return asked
    ? [asked.polarisation, asked.half, asked.position].filter((each) => each !== undefined).join("/")
    : "";
}

/** Options of a part that say what it asks for; a twin has them once for each input. */
function requestFor(part: Part, asked: RequestChoice): Record<string, unknown> {
  const request: Record<string, unknown> = {};
  for (const key of optionsOf(part, "asked polarisation")) request[key] = asked.polarisation;
  for (const key of optionsOf(part, "asked half")) request[key] = asked.half;
  if (asked.position)
    for (const key of optionsOf(part, "asked position"))
      if (part.options[key] !== "none") request[key] = asked.position;
  return request;
}
