/** A small invented house for the tests of the document: made by the edits themselves, so ids count up. */
import { type Design, EMPTY_DESIGN, type PortRef } from "../../src/design/design.ts";
import type { Edit } from "../../src/design/edits/edit.ts";
import { planJoin } from "../../src/design/edits/join.ts";
import { addPart, newPart } from "../../src/design/edits/parts.ts";

export function must(edit: Edit): Design {
  if (!edit.ok) throw new Error(edit.reason);
  return edit.design;
}

/** Adds parts "kind" or "kind {options}" in a row, then wires "a/port > b/port". */
export function drawn(
  kinds: readonly (string | readonly [kind: string, options: Record<string, unknown>])[],
  wires: readonly string[] = [],
  start: Design = EMPTY_DESIGN,
): Design {
  let design = start;
  for (const [i, entry] of kinds.entries()) {
    const [kind, options] = typeof entry === "string" ? [entry, {}] : entry;
    const part = newPart(design, kind, [i * 200, 0], options);
    if (!part) throw new Error(`no part of kind ${kind}`);
    design = must(addPart(design, part));
  }
  for (const wire of wires) {
    const [from = "", to = ""] = wire.split(" > ");
    design = must(planJoin(design, ref(from), ref(to)));
  }
  return design;
}

export function ref(text: string): PortRef {
  const [part = "", port = ""] = text.split("/");
  return [part, port];
}

/** Wires as text, in the order of the design: "lnb1/out1 > cable1/in". */
export function wiring(design: Design): string[] {
  return design.wires.map(({ from, to }) => `${from.join("/")} > ${to.join("/")}`);
}

/** Three bedrooms and a living room: some 40 parts, many with options and labels of their own. */
export function typicalHouse(): Design {
  const rooms = ["Living room", "Bedroom 1", "Bedroom 2", "Bedroom 3"];
  const kinds = [
    "dish",
    ["lnb-universal", { outputs: "4" }],
    "aerial-uhf",
    "aerial-dab",
    "aerial-fm",
    "triplexer-combine",
    ["amp-distribution", { gainDb: 20 }],
    ["splitter", { ways: 4 }],
    ...rooms.flatMap((_, i) => [
      ["cable", { lengthM: 12.5 + i }],
      ["cable", { lengthM: 14 }],
      "diplexer-combine",
      "outlet-triplexed",
      "receiver-tv",
      "receiver-sat",
      ["receiver-dab", {}],
    ]),
  ] as Parameters<typeof drawn>[0];
  const wires = [
    "dish1/sky > lnb1/sky",
    "aerial1/out > triplex1/uhf",
    "dab1/out > triplex1/dab",
    "fm1/out > triplex1/fm",
    "triplex1/out > amp1/in",
    "amp1/out > split1/in",
    ...rooms.flatMap((_, i) => [
      `lnb1/out${i + 1} > cable${2 * i + 1}/in`,
      `cable${2 * i + 1}/out > diplex${i + 1}/sat`,
      `split1/out${i + 1} > diplex${i + 1}/tv`,
      `diplex${i + 1}/out > cable${2 * i + 2}/in`,
      `cable${2 * i + 2}/out > plate${i + 1}/in`,
      `plate${i + 1}/tv > tv${i + 1}/in`,
      `plate${i + 1}/sat > sat${i + 1}/sat`,
      `plate${i + 1}/radio > dab${i + 2}/in`,
    ]),
  ];
  const design = drawn(kinds, wires);
  return {
    ...design,
    title: "House with three bedrooms",
    lesson: "One cable to each room carries terrestrial TV, radio and satellite.",
    parts: design.parts.map((part, i) => ({
      ...part,
      label: part.kind.startsWith("outlet") ? `Plate, ${rooms[Number(part.id.slice(5)) - 1]}` : part.label,
      at: [(i % 9) * 208, Math.floor(i / 9) * 144],
    })),
  };
}
