/** Arbitrary variations of the examples: whole installations in which some parts are set to anything, and wires off. */
import fc from "fast-check";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { kindOf } from "../../src/parts/catalogue.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { anyOptions } from "../arbitraries.ts";

const WHOLE: readonly Design[] = [
  ...EXAMPLES.map((e) => e.load()),
  ...RULE_EXAMPLES.flatMap((e) => [e.speaks.load(), e.silent.load()]),
];

/** Labels are the ids, so that words around them can be looked at. */
export function variedExample(): fc.Arbitrary<Design> {
  return fc.constantFrom(...WHOLE).chain((design) => {
    const some = fc.subarray([...design.parts], { maxLength: Math.min(4, design.parts.length) });
    const off = fc.subarray([...design.wires], { maxLength: Math.min(2, design.wires.length) });
    return fc.tuple(some, off).chain(([changed, loose]) =>
      fc
        .tuple(...changed.map((part) => anyOptions(kindOf(part.kind) ?? unknown(part.kind))))
        .map((options) => ({
          ...design,
          wires: design.wires.filter((wire) => !loose.includes(wire)),
          parts: design.parts.map((part) => {
            const at = changed.indexOf(part);
            return {
              ...part,
              label: part.id,
              options: at < 0 ? part.options : (options[at] ?? part.options),
            };
          }),
        })),
    );
  });
}

function unknown(kind: string): never {
  throw new Error(`no kind ${kind}`);
}
