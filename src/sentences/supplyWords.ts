/** Phrases about supply that several rules and walks share. */

import { z } from "zod";
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Setting } from "../findings/walk/settings.ts";
import { isCable } from "../findings/walk/supplyWay.ts";
import type { VoltsLost } from "../findings/walk/voltsLost.ts";
import { fieldMeta } from "../parts/fields.ts";
import { numeral } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { list, partName } from "./phrases.ts";
import { captionOf } from "./planes.ts";

/** "output 2", "input HL", "the aerial input"; "its output" where it has but one. */
export function portWords(record: PartRecord | undefined, port: string): string {
  const found = record?.ports.find((p) => p.id === port);
  if (!found) return "a port";
  if (found.medium === "sky") return found.side === "in" ? "its feed" : "its focus";
  const side = found.side === "in" ? "input" : "output";
  const name = found.label.replace(/^(?:in|out)(?: |$)/, "");
  if (name === "") return `its ${side}`;
  return /^[a-z]/.test(name) ? `the ${name} ${side}` : `${side} ${name}`;
}

/** "output 2 of ⟦split⟧", "the input of ⟦tv⟧". */
export function portOfPart(record: PartRecord | undefined, id: string, port: string): string {
  return `${portWords(record, port).replace(/^its /, "the ")} of ${partName(id)}`;
}

/** "input 2", "inputs VL and HL", "its input". */
export function portsWords(record: PartRecord | undefined, ports: readonly string[]): string {
  const words = ports.map((port) => portWords(record, port));
  if (words.length < 2) return words[0] ?? "a port";
  const names = ports.map((port) => record?.ports.find((p) => p.id === port)?.label ?? port);
  const isInput = record?.ports.find((p) => p.id === ports[0])?.side === "in";
  return `${isInput ? "inputs" : "outputs"} ${list(names)}`;
}

/** 'Set “Supply and tone pass” of ⟦split⟧ to “From output 1 only”', as the inspector names it. */
export function optionSetWords(record: PartRecord | undefined, { option, value }: Setting): string {
  const schema = record?.kind.options.shape[option];
  const meta = schema instanceof z.ZodType ? fieldMeta(schema) : undefined;
  const name = partName(record?.part.id ?? "");
  const label = meta?.label ?? option;
  if (typeof value === "boolean") return `Switch “${label}” of ${name} ${value ? "on" : "off"}`;
  const choice = meta?.choices?.find((c) => c.value === value)?.label ?? value;
  return `Set “${label}” of ${name} to “${choice}”`;
}

/** What mends a cable that takes too many volts, or a joint that does; without a stop. */
export function lessResistance(record: PartRecord | undefined): string {
  const name = partName(record?.part.id ?? "");
  return isCable(record)
    ? `Replace ${name} with copper of lower resistance, or shorten it`
    : `Cut out ${name} and fit a new connector`;
}

/** "12 V arrive", "1 V arrives": a verb that agrees with the volts as they are printed. */
export function voltsDo(volts: number, verb: { readonly one: string; readonly other: string }): string {
  return plural(volts, { one: (n) => `${n} V ${verb.one}`, other: (n) => `${n} V ${verb.other}` });
}

/** "⟦drop⟧ takes 4.4 V", "the diode in ⟦split⟧ takes 0.5 V"; undefined where nothing on the way takes any. */
export function takerWords({ taker }: VoltsLost): string | undefined {
  if (!taker) return undefined;
  const isDiode = taker.diodeVolts > taker.volts / 2;
  const who = isDiode ? `the diode in ${partName(taker.part)}` : partName(taker.part);
  return `${who} takes ${numeral(taker.volts) === "0" ? `less than ${numeral(0.1)}` : numeral(taker.volts)} V`;
}

/** What the part that takes most is made of: "120 m · 1.0 mm copper-clad steel, 15.6 Ω". */
export function takerMade(record: PartRecord | undefined, { taker }: VoltsLost): string | undefined {
  if (!record || !taker || taker.ohms <= 0) return undefined;
  return `${captionOf(record)}, ${numeral(taker.ohms)} Ω`;
}
