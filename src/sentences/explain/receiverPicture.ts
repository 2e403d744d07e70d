/** Picture of what arrives at a receiver, with the carriers marked that it does not get. */

import { carrierKey, type LostCarrier } from "../../findings/carrierResult.ts";
import { receiverResults } from "../../findings/inputReception.ts";
import { SILENCE } from "../../signal/band.ts";
import type { ToldFinding } from "../ruleWords.ts";
import { type Mark, markCarriers, pictureOf, type SpectrumPicture, spotOf } from "./picture.ts";

/** The first input on which lost carriers are seen; else the first input that something is joined to. */
export function pictureOfInputs(
  facts: ToldFinding,
  look: Omit<Mark, "fromMHz" | "toMHz">,
  isMeant: (lost: LostCarrier) => boolean,
): SpectrumPicture | null {
  const { record, finding } = facts;
  const { service } = finding.at;
  if (!record || !service) return null;
  const results = receiverResults(record, service);
  const inputs = (record.kind.reception?.(record.options).inputs ?? []).filter(
    (input) => input.services.includes(service) && record.joined[input.port],
  );
  const pictures = inputs.flatMap(({ port }) => {
    const marks = markCarriers(
      record.inputs[port] ?? SILENCE,
      (band, i) => {
        if (band.stack) return true;
        const result = results.get(carrierKey(band.origin.key, band.grid.index[i] ?? 0));
        return band.origin.service === service && result?.got === false && isMeant(result);
      },
      look,
    );
    const picture = pictureOf(facts, spotOf(facts, port), marks);
    return picture ? [picture] : [];
  });
  return pictures.find((picture) => picture.marks.length > 0) ?? pictures[0] ?? null;
}
