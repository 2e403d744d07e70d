/** How the television of a whole design comes: from the air, by cable, or both. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Television } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";
import { bandFactsOf } from "./bandFacts.ts";

type Ways = { readonly television?: Television };

const known = new WeakMap<Evaluation, Ways>();

/** Of all sources together, for a choice or a column that has no carrier at hand; nothing where all are aerials, or none sends. */
export function televisionIn(evaluation: Evaluation): Ways {
  return remembered(known, evaluation, () => waysOf(evaluation));
}

function waysOf({ records }: Evaluation): Ways {
  const ways = new Set<Television | undefined>();
  for (const { part, outputs } of records)
    for (const { bands } of Object.values(outputs))
      for (const band of bands)
        if (band.origin.part === part.id && band.origin.service === "tv" && !band.isFloor)
          ways.add(bandFactsOf(band).television);
  if (ways.size > 1) return { television: "by air and cable" };
  const [only] = ways;
  return only ? { television: only } : {};
}
