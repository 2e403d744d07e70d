/** Which other places are in order: a part that serves them well too is less likely to be the culprit. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { remembered } from "../../signal/remember.ts";
import { extreme } from "../extreme.ts";
import { profileOf } from "../limits.ts";
import { heardAt, placesOf } from "../places.ts";
import { stagesTo } from "./stages.ts";

const known = new WeakMap<Evaluation, Map<string, ReadonlySet<string>>>();

/** Outputs ("part.port") on the way to some place of a service that is within its limits. */
export function outputsInOrder(
  evaluation: Evaluation,
  service: Service,
  limit: "level" | "C/N",
): ReadonlySet<string> {
  const ofAll = remembered(known, evaluation, () => new Map<string, ReadonlySet<string>>());
  return remembered(ofAll, `${service} ${limit}`, () => inOrder(evaluation, service, limit));
}

function inOrder(evaluation: Evaluation, service: Service, limit: "level" | "C/N"): ReadonlySet<string> {
  const outputs = new Set<string>();
  const profile = profileOf(evaluation.design);
  if (!WANTED_SERVICES.some((s) => s === service)) return outputs;
  for (const record of evaluation.records) {
    const kindAt = (port: string) => evaluation.record(record.joined[port]?.[0] ?? "")?.kind;
    for (const place of placesOf({ record, kindAt })) {
      if (!place.services.includes(service)) continue;
      const heard = heardAt(place, service, profile);
      const worst = extreme(heard, (c) => -c.cniDb);
      if (!worst) continue;
      const isFine = heard.every(({ levelDbuv, cniDb, limits }) =>
        limit === "C/N" ? cniDb >= limits.cnDb : levelDbuv >= limits.minDbuv && levelDbuv <= limits.maxDbuv,
      );
      if (!isFine) continue;
      for (const { step } of stagesTo(evaluation, { part: record.part.id, port: place.port }, worst))
        outputs.add(`${step.part}.${step.to}`);
    }
  }
  return outputs;
}
