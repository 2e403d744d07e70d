/** Parsed JSON, before anybody has checked it. */

export type Fields = Readonly<Record<string, unknown>>;

export function isObject(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** What stands at a path; undefined where it leads nowhere. Own keys only. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let current = value;
  for (const key of path) {
    if (typeof current !== "object" || current === null || !Object.hasOwn(current, key)) return undefined;
    current = Reflect.get(current, key);
  }
  return current;
}
