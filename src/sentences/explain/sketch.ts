/** Draws a small design in a few lines: for the examples of the rule book. */
import type { Design, Part, PartId, Wire } from "../../design/design.ts";
import type { Settings } from "../../design/settings.ts";
import { kindOf } from "../../parts/catalogue.ts";

/** Id → kind, and the options that differ from the defaults. */
export type Sketch = Readonly<Record<PartId, readonly [kind: string, options?: Record<string, unknown>]>>;

/** Room for one part on the canvas [px]. */
const COLUMN_PX = 280;
const ROW_PX = 160;

/**
 * `wires`: "dish.sky > lnb.sky", several of them separated by commas. Parts are named after their kind, counted
 * where there are several, and stand in columns, each to the right of whatever leads to it.
 */
export function sketch(title: string, parts: Sketch, wires: string, settings?: Settings): Design {
  const joined = wires
    .split(",")
    .map((text) => text.trim())
    .filter((text) => text !== "")
    .map(asWire);
  const names = namesOf(parts);
  const columns = columnsOf(Object.keys(parts), joined);
  const rows = new Map<number, number>();
  const drawn = Object.entries(parts).map(([id, [kindKey, options]]): Part => {
    const kind = kindOf(kindKey);
    // The sketches are part of the program: a faulty one is a fault of the program.
    if (!kind) throw new Error(`Sketch “${title}”: no kind ${kindKey}`);
    const unknown = Object.keys(options ?? {}).find((key) => !Object.hasOwn(kind.options.shape, key));
    if (unknown) throw new Error(`Sketch “${title}”: ${kindKey} has no option ${unknown}`);
    const column = columns.get(id) ?? 0;
    const row = rows.get(column) ?? 0;
    rows.set(column, row + 1);
    return {
      id,
      kind: kindKey,
      label: names.get(id) ?? id,
      options: kind.options.parse(options ?? {}),
      at: [column * COLUMN_PX, row * ROW_PX],
    };
  });
  return { title, ...(settings ? { settings } : {}), parts: drawn, wires: joined };
}

function namesOf(parts: Sketch): ReadonlyMap<PartId, string> {
  const entries = Object.entries(parts);
  return new Map(
    entries.map(([id, [kind]]) => {
      const alike = entries.filter(([, [other]]) => other === kind);
      const name = kindOf(kind)?.name ?? kind;
      return [id, alike.length === 1 ? name : `${name} ${alike.findIndex(([other]) => other === id) + 1}`];
    }),
  );
}

function asWire(text: string): Wire {
  const [from, to] = text.split(">").map((end) => end.trim().split("."));
  if (!from?.[0] || !from[1] || !to?.[0] || !to[1]) throw new Error(`Not a wire: ${text}`);
  return { from: [from[0], from[1]], to: [to[0], to[1]] };
}

/** Longest way from a part without input; on a loop it stops at the number of parts. */
function columnsOf(ids: readonly PartId[], wires: readonly Wire[]): ReadonlyMap<PartId, number> {
  const columns = new Map(ids.map((id) => [id, 0]));
  for (let round = 0; round < ids.length; round++) {
    let moved = false;
    for (const { from, to } of wires) {
      const wanted = Math.min(ids.length - 1, (columns.get(from[0]) ?? 0) + 1);
      if (wanted <= (columns.get(to[0]) ?? 0)) continue;
      columns.set(to[0], wanted);
      moved = true;
    }
    if (!moved) break;
  }
  return columns;
}
