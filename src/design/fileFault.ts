/** From what the schema of the file complains of to a fact: the part by its label, the field by its name. */
import type { z } from "zod";
import type { Allowed, FaultPlace, InputFault, NameOrNumber } from "./fault.ts";
import { LIMITS } from "./limits.ts";
import { fieldFault } from "./optionFault.ts";
import { isObject, valueAt } from "./raw.ts";
import { SETTINGS } from "./settings.ts";

type Field = readonly [words: string, allowed: Allowed];

const FILE_FIELDS: Readonly<Record<string, Field>> = {
  title: ["the title", { type: "text", most: LIMITS.titleLength }],
  lesson: ["the lesson", { type: "text", most: LIMITS.lessonLength }],
  settings: ["the group of settings", { type: "values" }],
  variant: ["the name of the active variant", { type: "name" }],
  variants: ["the list of variants", { type: "list" }],
};

const CONTENT_FIELDS: Readonly<Record<string, Field>> = {
  name: ["the name", { type: "name" }],
  parts: ["the list of parts", { type: "list" }],
  wires: ["the list of wires", { type: "list" }],
};

const PART_FIELDS: Readonly<Record<string, Field>> = {
  id: ["the id", { type: "id" }],
  kind: ["the kind", { type: "text" }],
  label: ["the name", { type: "text", most: LIMITS.labelLength }],
  options: ["the group of options", { type: "values" }],
  at: ["the place", { type: "place" }],
};

const WIRE_FIELDS: Readonly<Record<string, Field>> = {
  from: ["its start", { type: "port" }],
  to: ["its end", { type: "port" }],
};

const REACH: Allowed = { type: "number", min: -LIMITS.reach, max: LIMITS.reach, isWhole: false };

/** `issue`: of the schema of the whole file. */
export function fileFault(file: unknown, issue: z.core.$ZodIssue | undefined): InputFault {
  const [key, index, ...rest] = issue?.path ?? [];
  if (key === "settings" && typeof index === "string") {
    return fieldFault({
      field: Object.entries(SETTINGS.shape).find(([name]) => name === index)?.[1],
      key: index,
      value: valueAt(file, [key, index]),
      issue: issue && { ...issue, path: rest },
      place: {},
    });
  }
  if (key !== "variants" || typeof index !== "number") return contentFault(file, issue?.path ?? [], {});
  const content = valueAt(file, [key, index]);
  const name = isObject(content) && typeof content.name === "string" ? content.name.trim() : "";
  const variant = { name: name === "" ? null : name, number: index + 1 };
  if (rest.length > 0) return contentFault(content, rest, { variant });
  return {
    type: "value",
    place: {},
    field: `variant ${index + 1}`,
    found: content,
    allowed: { type: "values" },
  };
}

/** `path` begins in the content: the design itself or one of its variants. */
function contentFault(content: unknown, path: readonly PropertyKey[], place: FaultPlace): InputFault {
  const [list, index, key, axis] = path;
  if (list === "parts" && typeof index === "number") {
    const part = partMark(valueAt(content, [list, index]), index);
    if (key === undefined) return wrong(place, [`part ${index + 1}`, { type: "values" }], content, path);
    const here = { ...place, part };
    const found = valueAt(content, path);
    if (axis === undefined || typeof found !== "number")
      return wrong(here, PART_FIELDS[String(key)], content, [list, index, key]);
    return wrong(here, [axis === 0 ? "the place across" : "the place down", REACH], content, path);
  }
  if (list === "wires" && typeof index === "number") {
    if (key === undefined) return wrong(place, [`wire ${index + 1}`, { type: "values" }], content, path);
    return wrong({ ...place, wire: index + 1 }, WIRE_FIELDS[String(key)], content, [list, index, key]);
  }
  const field = FILE_FIELDS[String(list)] ?? CONTENT_FIELDS[String(list)];
  return wrong(place, field, content, list === undefined ? [] : [list]);
}

function wrong(
  place: FaultPlace,
  field: Field | undefined,
  content: unknown,
  path: readonly PropertyKey[],
): InputFault {
  const found = valueAt(content, path);
  const [words, allowed] = field ?? ["the design", { type: "values" }];
  // A text that is too long says so by its length; one that is not even a text needs no number.
  if (allowed.type !== "name" || typeof found !== "string" || found.trim() === "")
    return { type: "value", place, field: words, found, allowed };
  return {
    type: "value",
    place,
    field: words,
    found,
    allowed: { type: "text", most: LIMITS.variantNameLength },
  };
}

/** How an entry of a list of parts is spoken of, whatever it may be. */
export function partMark(entry: unknown, index: number): NameOrNumber {
  const { label, id }: { label?: unknown; id?: unknown } = isObject(entry) ? entry : {};
  const name = [label, id].find((text) => typeof text === "string" && text.trim() !== "");
  return { name: typeof name === "string" ? name : null, number: index + 1 };
}
