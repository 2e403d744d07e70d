/** Which services a part passes only while it is fed: a multiswitch without supply still passes what goes by passively. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Service } from "../../signal/carrier.ts";
import { wayGainDb } from "../blame/shortcomings.ts";
import { servicesAt } from "../causes/ways.ts";

/** A way that loses no more than this without supply is a passive one [dB]. */
const ALIKE_DB = 1;

/** Services that come out at a port only while the part is fed. */
export function servicesByPower(record: PartRecord, port: string): ReadonlySet<Service> {
  return new Set([...servicesAt(record)].filter((service) => !isPassive(record, service, port)));
}

/** Whether every way that a service takes to an output is as good without supply. */
function isPassive(
  { kind, options, part, treatment, inputs }: PartRecord,
  service: Service,
  to: string,
): boolean {
  const dead = kind.signal(options, { id: part.id, powered: false }).paths ?? [];
  const ways = Object.entries(inputs).flatMap(([from, { bands }]) =>
    bands
      .filter((band) => band.origin.service === service)
      .flatMap((band) => {
        const way = { from, to, centreMHz: band.grid.centre[0] ?? 0, origin: band.origin };
        const aliveDb = wayGainDb(treatment.paths ?? [], way);
        return aliveDb === undefined ? [] : [{ aliveDb, deadDb: wayGainDb(dead, way) }];
      }),
  );
  // Made into user bands, it has no way of its own; otherwise it does not come out there at all.
  if (ways.length === 0) return !treatment.stacks?.some((stack) => stack.to === to);
  return ways.every(({ aliveDb, deadDb }) => (deadDb ?? -Infinity) >= aliveDb - ALIKE_DB);
}
