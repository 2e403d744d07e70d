/** Where in a file something is wrong, as words: `parts[3] "lnb9": options.lengthM`. */

export type Fields = Readonly<Record<string, unknown>>;

export function isObject(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Entries of a list whose own name is said beside their number, and where that name stands. */
const NAMED: Readonly<Record<string, string>> = { parts: "id", variants: "name" };

/** The path, with the name of each part and variant that it leads through. */
export function placeOf(file: unknown, path: readonly PropertyKey[]): string {
  const [list, index, ...rest] = path;
  const nameKey = typeof list === "string" ? NAMED[list] : undefined;
  if (typeof list !== "string" || nameKey === undefined || typeof index !== "number") {
    return path.map(step).join("").replace(/^\./, "");
  }
  const entries = isObject(file) ? file[list] : undefined;
  const entry: unknown = Array.isArray(entries) ? entries[index] : undefined;
  const name = isObject(entry) ? entry[nameKey] : undefined;
  const said = typeof name === "string" ? ` "${shortened(name)}"` : "";
  const inner = placeOf(entry, rest);
  return `${list}[${index}]${said}${inner === "" ? "" : `: ${inner}`}`;
}

function step(key: PropertyKey): string {
  return typeof key === "number" ? `[${key}]` : `.${shortened(String(key))}`;
}

/** Foreign text in a message stays short. */
export function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
