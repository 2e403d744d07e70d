/** Parts and wires of a file, of the design itself or of one of its variants: checked against the catalogue. */
import { kindOf } from "../parts/catalogue.ts";
import type { Design, Part, Wire } from "./design.ts";
import { portOf, portsOf } from "./lookup.ts";
import { checkOptions } from "./options.ts";
import { shortened } from "./place.ts";
import type { FileV1 } from "./schema.ts";

export type Content = Pick<Design, "parts" | "wires">;
export type Fault = { readonly path: readonly PropertyKey[]; readonly message: string };

type Raw = Pick<FileV1, "parts" | "wires">;

/** `at`: where the content stands in the file. */
export function checkContent(
  raw: Raw,
  at: readonly PropertyKey[],
  note: (path: readonly PropertyKey[], text: string) => void,
): { readonly ok: true; readonly content: Content } | { readonly ok: false; readonly fault: Fault } {
  const fail = (path: readonly PropertyKey[], message: string) => ({
    ok: false as const,
    fault: { path: [...at, ...path], message },
  });
  const parts = new Map<string, Part>();
  for (const [i, entry] of raw.parts.entries()) {
    const here = ["parts", i];
    if (parts.has(entry.id)) return fail(here, "another part has the same id");
    const kind = kindOf(entry.kind);
    if (!kind) return fail(here, `unknown kind ${JSON.stringify(shortened(entry.kind))}`);
    const checked = checkOptions(kind, entry.options);
    if (!checked.ok) return fail([...here, "options", ...checked.path], checked.message);
    for (const key of Object.keys(entry.options)) {
      if (!Object.hasOwn(kind.options.shape, key))
        note([...at, ...here], `option "${shortened(key)}" is not known and was left out.`);
    }
    const { id, label = id } = entry;
    parts.set(id, { id, kind: entry.kind, label, options: checked.options, at: entry.at ?? cell(i) });
  }
  const problem = wireProblem(raw.wires, parts);
  if (problem) return fail(problem.path, problem.message);
  return { ok: true, content: { parts: [...parts.values()], wires: raw.wires } };
}

function wireProblem(wires: readonly Wire[], parts: ReadonlyMap<string, Part>): Fault | null {
  const taken = new Map<string, number>();
  for (const [i, wire] of wires.entries()) {
    for (const end of ["from", "to"] as const) {
      const path = ["wires", i, end];
      const problem = endProblem(wire, end, parts);
      if (problem !== null) return { path, message: problem };
      const port = wire[end].join("/");
      const other = taken.get(port);
      if (other !== undefined)
        return { path, message: `port "${port}" is taken by wires[${other}]; a port takes one wire` };
      taken.set(port, i);
    }
    const [source, target] = [mediumOf(wire.from, parts), mediumOf(wire.to, parts)];
    if (source !== target)
      return { path: ["wires", i], message: `joins a ${source} port to a ${target} port` };
  }
  return null;
}

function endProblem(wire: Wire, end: "from" | "to", parts: ReadonlyMap<string, Part>): string | null {
  const [id, portId] = wire[end];
  const part = parts.get(id);
  if (!part) return `there is no part "${id}"`;
  const port = portOf(part, portId);
  if (!port) {
    const known = portsOf(part).map((each) => each.id);
    const some = known.length > 12 ? [...known.slice(0, 12), "…"] : known;
    return `part "${id}" has no port ${JSON.stringify(portId)}; it has ${some.join(", ")}`;
  }
  if (end === "from" && port.side === "in")
    return `"${id}/${portId}" is an input; a wire starts at an output`;
  if (end === "to" && port.side === "out") return `"${id}/${portId}" is an output; a wire ends at an input`;
  return null;
}

function mediumOf([id, port]: Wire["from"], parts: ReadonlyMap<string, Part>): string {
  const part = parts.get(id);
  return (part && portOf(part, port)?.medium) ?? "missing";
}

/** Where a part goes that came without a place: rows of eight [px]. */
function cell(index: number): readonly [number, number] {
  return [(index % 8) * 240, Math.floor(index / 8) * 160];
}
