/** Every sentence about a fault of a file, a link or a value, from the fact. */
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import type { Allowed, FaultPlace, InputFault, NameOrNumber, PortMark, ValueFault } from "./fault.ts";
import { countWords, syntaxWords } from "./faultPhrases.ts";
import { quotedText, shownNumber, someOf } from "./shown.ts";

/** One sentence or two that say where, what was found and what is allowed. */
export function faultWords(fault: InputFault): string {
  switch (fault.type) {
    case "value":
      return `${capital(`${placeWords(fault.place)}${valueWords(fault)}`)}.`;
    case "syntax":
      return `This is not a design file: at line ${shownNumber(fault.line)}, column ${shownNumber(fault.column)}, ${syntaxWords(fault.what)}.`;
    case "too long":
      return `The file is too large: ${megabytes(fault.length)} MB; at most ${megabytes(fault.most)} MB can be opened.`;
    case "too many values":
      return `The file is too large: it holds more than ${shownNumber(fault.most)} values.`;
    case "no design":
      return "This is not a design: another program may have written the file.";
    case "no version":
      return `This is not a design: its version should be a whole number from 1 to ${fault.newest}.`;
    case "newer":
      return `The file was written by a newer edition, as version ${shownNumber(fault.version)}; this edition reads up to version ${fault.newest}.`;
    case "newer values":
      return `The file was written by a newer edition, with set ${shownNumber(fault.set)} of the typical values; this edition knows up to set ${fault.newest}.`;
    case "too many":
      return `There are ${countWords(fault.count, fault.what)}; a design holds at most ${shownNumber(fault.most)}.`;
    case "unknown kind":
      return `${placeWords(fault.place)}this edition does not know the kind of part ${quotedText(fault.kind)}.`;
    case "same id":
      return `${placeWords(fault.place)}the id ${quotedText(fault.id)} belongs to ${partWords(fault.other)} already; each part needs its own.`;
    case "same variant":
      return `Two variants have the name ${quotedText(fault.name)}; each needs its own.`;
    case "no part":
      return capital(
        `${placeWords(fault.place)}${fault.end === "from" ? "it starts" : "it ends"} at the part ${quotedText(fault.id)}, which is not in the design.`,
      );
    case "no port":
      return `${placeWords(variantOf(fault.place))}${noPortWords(fault)}.`;
    case "wrong side":
      return fault.port.side === "in"
        ? `${placeWords(fault.place)}it starts at the ${portWords(fault.port)}; a wire starts at an output.`
        : `${placeWords(fault.place)}it ends at the ${portWords(fault.port)}; a wire ends at an input.`;
    case "two wires":
      return `${placeWords(variantOf(fault.place))}${capital(
        fault.port.side === "in"
          ? `two wires end at the ${portWords(fault.port)}; an input takes one wire`
          : `two wires start at the ${portWords(fault.port)}; an output takes one wire`,
      )}.`;
    case "wrong medium":
      return fault.medium === "sky"
        ? `${placeWords(fault.place)}it leads the beam of ${partWords(fault.from)} to ${partWords(fault.to)}, which takes a coaxial cable there.`
        : `${placeWords(fault.place)}it leads a coaxial cable from ${partWords(fault.from)} to ${partWords(fault.to)}, which needs the beam of a dish there.`;
  }
}

/** Values that a reader did not know and left out: the first of them by name, and how many in all. */
export type LeftOut = {
  readonly first: readonly { readonly part: NameOrNumber; readonly key: string }[];
  readonly count: number;
};

export function leftOutWords({ first, count }: LeftOut): string {
  const names = first.map(({ part, key }) => `${quotedText(key)} of ${partWords(part)}`);
  return plural(count, {
    one: `This edition does not know the value ${names[0] ?? ""} and left it out.`,
    other: `This edition does not know these values and left them out: ${someOf(names, count)}.`,
  });
}

function valueWords({ field, found, allowed }: ValueFault): string {
  if (found === undefined) return `${field} is missing`;
  if (allowed.type === "text" && typeof found === "string" && allowed.most !== undefined)
    return `${field} has ${shownNumber(found.length)} characters; at most ${shownNumber(allowed.most)} are allowed`;
  if (allowed.type === "list" && Array.isArray(found) && allowed.most !== undefined)
    return `${shownNumber(found.length)} rows in ${field} are too many; at most ${shownNumber(allowed.most)} are allowed`;
  const unit = allowed.type === "number" ? allowed.unit : undefined;
  return `${field} is ${foundWords(found, unit)}; allowed is ${allowedWords(allowed)}`;
}

function foundWords(found: unknown, unit: string | undefined): string {
  if (found === null) return "empty";
  if (Array.isArray(found)) return "a list";
  switch (typeof found) {
    case "number":
      return `${shownNumber(found)}${unit === undefined || !(Math.abs(found) < 1e15) ? "" : ` ${unit}`}`;
    case "string":
      return found.trim() === "" ? "an empty text" : quotedText(found);
    case "boolean":
      return "a yes-or-no value";
    default:
      return "a group of values";
  }
}

function allowedWords(allowed: Allowed): string {
  switch (allowed.type) {
    case "number":
      return numberWords(allowed);
    case "text":
      return allowed.most === undefined
        ? "a text"
        : `a text of at most ${shownNumber(allowed.most)} characters`;
    case "choice":
      return someOf(allowed.labels.map(quotedText));
    case "list":
      return "a list";
    case "yes or no":
      return "yes or no";
    case "id":
      return "1 to 40 letters, digits, hyphens and underscores";
    case "name":
      return "a text that is not empty";
    case "values":
      return "a group of named values";
    case "place":
      return "a pair of numbers, across and down";
    case "port":
      return "a pair of texts, the id of a part and one of its ports";
  }
}

function numberWords({ min, max, unit, isWhole }: Allowed & { type: "number" }): string {
  const tail = unit === undefined ? "" : ` ${unit}`;
  const kind = isWhole ? "a whole number from " : "";
  if (min === undefined || max === undefined) return isWhole ? "a whole number" : "a number";
  return `${kind}${shownNumber(min)} to ${shownNumber(max)}${tail}`;
}

const KNOWN_PORTS = {
  in: {
    none: "it has no inputs at all",
    one: (names: string) => `its only input is ${names}`,
    other: (names: string) => `its inputs are ${names}`,
  },
  out: {
    none: "it has no outputs at all",
    one: (names: string) => `its only output is ${names}`,
    other: (names: string) => `its outputs are ${names}`,
  },
} as const;

function noPortWords({ part, side, port, known }: InputFault & { type: "no port" }): string {
  const words = KNOWN_PORTS[side];
  const names = someOf(known.map(quotedText));
  const rest = plural(known.length, {
    zero: words.none,
    one: words.one(names),
    other: words.other(names),
  });
  return `${partWords(part)} has no ${side === "in" ? "input" : "output"} ${quotedText(port)}; ${rest}`;
}

function portWords({ part, side, label, isOnly }: PortMark): string {
  const noun = side === "in" ? "input" : "output";
  return `${isOnly ? noun : `${noun} ${quotedText(label)}`} of ${partWords(part)}`;
}

function partWords(part: NameOrNumber): string {
  return part.name === null ? `part ${nameWords(part)}` : nameWords(part);
}

function nameWords({ name, number }: NameOrNumber): string {
  return name === null ? shownNumber(number) : quotedText(name);
}

/** "Variant “Plan A”, “Dish 1”, Transponders, row 3: "; empty where there is nothing to say. */
function placeWords({ variant, part, wire, row }: FaultPlace): string {
  const words = [
    ...(variant === undefined ? [] : [`variant ${nameWords(variant)}`]),
    ...(part === undefined ? [] : [partWords(part)]),
    ...(wire === undefined ? [] : [`wire ${shownNumber(wire)}`]),
    ...(row === undefined ? [] : [row.list, `row ${shownNumber(row.number)}`]),
  ];
  return words.length === 0 ? "" : `${capital(words.join(", "))}: `;
}

/** The place without the wire, where the sentence itself names both ends of it. */
function variantOf({ variant }: FaultPlace): FaultPlace {
  return variant === undefined ? {} : { variant };
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

function megabytes(length: number): string {
  return numeral(length / 1e6, 1, 1);
}
