/** A service by its name where no carrier is at hand: television comes from the air, by cable, or both ways. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { LimitRow } from "../findings/limits.ts";
import { televisionIn } from "../findings/television.ts";
import { type Service, serviceName, televisionOf } from "../signal/carrier.ts";

/** "Cable TV" where every television source of the design is one of cable. */
export function serviceNameIn(evaluation: Evaluation, service: Service): string {
  return serviceName({ service, ...(service === "tv" ? televisionIn(evaluation) : {}) });
}

/** A service as a set of limits has it: "Terrestrial and cable TV" where some of its rows are for cable. */
export function limitedName(service: Service, rows: readonly Pick<LimitRow, "service" | "mode">[]): string {
  const modes = rows.filter((row) => row.service === service).map((row) => row.mode);
  return serviceName({ service, ...televisionOf(service, modes) });
}
