/** Which other places are in order: a part that serves them well too is less likely to be the culprit. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { remembered } from "../../signal/remember.ts";
import { extreme } from "../extreme.ts";
import { type Profile, profileOf } from "../limits.ts";
import { type Heard, heardAt, type Place, placesOf } from "../places.ts";
import { askWhole } from "../watched.ts";
import { carrierKey, carrierOf, outputBefore, type PassedStage, type Spot, stageAt } from "./stages.ts";

type Limit = "level" | "C/N";

/** Whether an output ("part.port") lies on the way to some place of a service that is within its limits. */
export type InOrder = (output: string) => boolean;

export function outputsInOrder(evaluation: Evaluation, service: Service, limit: Limit): InOrder {
  return (output) => askWhole(evaluation, (whole) => allInOrder(whole, service, limit).has(output));
}

const known = new WeakMap<Evaluation, Map<string, ReadonlySet<string>>>();

function allInOrder(whole: Evaluation, service: Service, limit: Limit): ReadonlySet<string> {
  const ofAll = remembered(known, whole, () => new Map<string, ReadonlySet<string>>());
  return remembered(ofAll, `${service} ${limit}`, () => inOrder(whole, service, limit));
}

function inOrder(evaluation: Evaluation, service: Service, limit: Limit): ReadonlySet<string> {
  const outputs = new Set<string>();
  const profile = profileOf(evaluation.design);
  if (!WANTED_SERVICES.some((s) => s === service)) return outputs;
  const passed = new Set<string>();
  for (const record of evaluation.records) {
    const kindAt = (port: string) => evaluation.record(record.joined[port]?.[0] ?? "")?.kind;
    for (const place of placesOf({ record, kindAt })) {
      if (!place.services.includes(service)) continue;
      const worst = worstIfFine(place, { service, limit, profile });
      if (!worst) continue;
      let here: Spot | null | undefined = outputBefore(evaluation, {
        part: record.part.id,
        port: place.port,
      });
      const carrier = here && carrierOf(evaluation, here, worst);
      // Upwards as far as nobody has gone with this carrier.
      while (here && carrier) {
        const output: string = `${here.part}.${here.port}`;
        const key = `${output} ${carrierKey(carrier, worst.userBand)}`;
        const stage: PassedStage | undefined = passed.has(key)
          ? undefined
          : stageAt(evaluation, here, carrier, worst.userBand);
        if (!stage) break;
        passed.add(key);
        outputs.add(output);
        here = stage.before;
      }
    }
  }
  return outputs;
}

/** The worst carrier of a service at a place where all are in order. */
function worstIfFine(place: Place, asked: Asked): Heard | undefined {
  const { service, limit, profile } = asked;
  const heard = heardAt(place, service, profile);
  const isFine = heard.every(({ levelDbuv, cniDb, limits }) =>
    limit === "C/N" ? cniDb >= limits.cnDb : levelDbuv >= limits.minDbuv && levelDbuv <= limits.maxDbuv,
  );
  return isFine ? extreme(heard, (c) => -c.cniDb) : undefined;
}

type Asked = { readonly service: Service; readonly limit: Limit; readonly profile: Profile };
