/** Finds in a style sheet what a supported browser does not know: properties, values, functions, selectors, rules. */
import type { Identifier } from "@mdn/browser-compat-data/forLegacyNode";
import { type CssNode, parse, walk } from "css-tree";
import { missingIn, type TooNew, tables } from "./known.ts";

const { properties, selectors, types } = tables.css as Readonly<
  Record<string, Readonly<Record<string, Identifier>>>
>;
const atRules = tables.css["at-rules"] as unknown as Readonly<Record<string, Identifier>>;

/** Keywords and functions of every type of value: "color-mix", "fit-content"; a name may stand under several. */
const VALUES: ReadonlyMap<string, readonly Identifier[]> = valuesOf(types ?? {});

const UNITS: Readonly<Record<string, string>> = {
  dvh: "viewport_percentage_units_dynamic",
  dvw: "viewport_percentage_units_dynamic",
  svh: "viewport_percentage_units_small",
  lvh: "viewport_percentage_units_large",
  cqw: "container_query_length_units",
  cqi: "container_query_length_units",
};

/**
 * What is newer than the supported browsers. What stands under `@supports` may be missing; what has a maker's prefix
 * stands beside the plain name, or is an extra.
 */
export function tooNewInStyle(code: string): TooNew[] {
  const found: TooNew[] = [];
  const visit = (node: CssNode | Feature, inside: Inside) => {
    const check = (what: string, entry: Identifier | undefined) => {
      const missing = missingIn(entry);
      if (missing !== "" && !/^:?-/.test(what))
        found.push({ what, missingIn: missing, line: node.loc?.start.line ?? 0 });
    };
    if (node.type === "Feature")
      return check(`@media (${node.name})`, at(at(atRules, "media"), node.name.replace(/^(min|max)-/, "")));
    switch (node.type) {
      case "Atrule":
        return check(`@${node.name}`, at(atRules, node.name));
      case "Declaration":
        if (inside.beside.includes(`-webkit-${node.property}`)) return;
        return check(node.property, at(properties, node.property));
      case "PseudoClassSelector":
      case "PseudoElementSelector":
        return check(`:${node.name}`, at(selectors, node.name));
      case "NestingSelector":
        return check("&", at(selectors, "nesting"));
      case "Dimension":
        return check(`1${node.unit}`, at(at(types, "length"), UNITS[node.unit] ?? node.unit));
      case "Identifier":
      case "Function":
        if (inside.property === null) return;
        for (const entry of valueEntries(inside.property, node.name))
          check(`${inside.property}: ${node.name}`, entry);
    }
  };

  const tree = parse(code, { positions: true, parseCustomProperty: true, onParseError: refuse });
  walk(tree, function (node) {
    if (this.atrule?.name === "supports" && node.type !== "Atrule") return;
    const beside =
      this.block?.children.toArray().map((child) => ("property" in child ? child.property : "")) ?? [];
    visit(node, { property: this.declaration?.property ?? null, beside });
  });
  return found;
}

type Inside = {
  /** The property whose value is walked. */
  readonly property: string | null;
  /** All properties of its block. */
  readonly beside: readonly string[];
};

/** A condition of a media query; the parser makes it, its types do not have it yet. */
type Feature = { readonly type: "Feature"; readonly name: string; readonly loc?: CssNode["loc"] };

function refuse(error: { readonly message: string }): never {
  throw new Error(`A style sheet cannot be read: ${error.message}`);
}

/** What the tables say of a value: of this property's own first, else of all types, of which the oldest counts. */
function valueEntries(property: string, name: string): readonly Identifier[] {
  const own = at(at(properties, property), name);
  if (own) return [own];
  const entries = VALUES.get(name) ?? [];
  return entries.some((entry) => missingIn(entry) === "") ? [] : entries.slice(0, 1);
}

function valuesOf(table: Readonly<Record<string, Identifier>>): Map<string, Identifier[]> {
  const values = new Map<string, Identifier[]>();
  for (const [type, entry] of Object.entries(table)) {
    for (const [name, value] of [[type, entry] as const, ...Object.entries(entry)]) {
      if (name !== "__compat") values.set(name, [...(values.get(name) ?? []), value as Identifier]);
    }
  }
  return values;
}

function at(table: Readonly<Record<string, unknown>> | undefined, name: string): Identifier | undefined {
  return table && Object.hasOwn(table, name) ? (table[name] as Identifier) : undefined;
}
