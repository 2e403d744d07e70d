/** Meters in words: what is read, where, and what receivers ask for meanwhile. */

import type { Design, PortRef } from "../../design/design.ts";
import { partById, portOf, portsOf, quoted } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { summaries } from "../../remedies/faults/alike.ts";
import { QUANTITY_UNITS, type Quantity, type Reading } from "../../remedies/faults/reading.ts";
import type { RequestChoice } from "../../remedies/faults/requestChoice.ts";
import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { carriers, list } from "../phrases.ts";

/** "56 to 58 dBµV on 6 TV channels", "nothing", "17.6 V", "no tone". */
export function readingWords(shown: Reading): string {
  if (shown.quantity === "volts") return `${numeralAsSet(shown.volts)} V`;
  if (shown.quantity === "tone") return shown.tone ? "a 22 kHz tone" : "no tone";
  const unit = QUANTITY_UNITS[shown.quantity];
  const phrases = summaries(shown.carriers).map(({ service, count, least, most }) => {
    const range =
      least === most ? `${numeral(least)} ${unit}` : `${numeral(least)} to ${numeral(most)} ${unit}`;
    return `${range} on ${carriers(count, service)}`;
  });
  return phrases.length > 0 ? list(phrases) : "nothing";
}

/** As a label. */
export const QUANTITY_LABELS: Readonly<Record<Quantity, string>> = {
  level: "Level",
  cn: "C/N",
  mer: "MER",
  volts: "Volts",
  tone: "Tone",
};

/** After "measure". */
const QUANTITY_PHRASES: Readonly<Record<Quantity, string>> = {
  level: "the level",
  cn: "the C/N",
  mer: "the MER",
  volts: "the voltage",
  tone: "whether there is a 22 kHz tone",
};

type Measuring = { readonly at: PortRef; readonly quantity: Quantity; readonly asked: RequestChoice | null };

/** "Measure the voltage at the input of “Amplifier”." */
export function measurementSentence(design: Design, { at, quantity, asked }: Measuring): string {
  const measuring = `${QUANTITY_PHRASES[quantity]} at ${portPhrase(design, at)}.`;
  return asked
    ? `Let the receivers ask for ${requestChoiceWords(asked)}, and measure ${measuring}`
    : `Measure ${measuring}`;
}

/** A port in words, named where its part has several of that side: "the TV socket of “Plate”". */
export function portPhrase(design: Design, [id, portId]: PortRef): string {
  const part = partById(design, id);
  if (!part) return `${id} ${portId}`;
  const port = portOf(part, portId);
  const siblings = portsOf(part).filter((p) => p.side === port?.side && p.medium === "coax");
  const label = siblings.length > 1 ? `${port?.label ?? portId} ` : "";
  const isSocket = kindOf(part.kind)?.delivery !== undefined && port?.side === "out";
  if (isSocket) return `the ${port?.label ?? portId} socket of ${quoted(part)}`;
  return `the ${label}${port?.side === "out" ? "output" : "input"} of ${quoted(part)}`;
}

/** "horizontal, high band, position 2" */
export function requestChoiceWords({ polarisation, half, position }: RequestChoice): string {
  const words = `${polarisation === "H" ? "horizontal" : "vertical"}, ${half} band`;
  return position ? `${words}, position ${position}` : words;
}
