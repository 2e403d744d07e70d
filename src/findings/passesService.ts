/** Whether a part is made to take a service in by an input, whatever it does with it now. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Service } from "../signal/carrier.ts";
import { gainDbAt } from "../signal/gain.ts";
import type { Response } from "../signal/response.ts";

/** A frequency in the middle of each service on a coaxial line [MHz]. */
const MIDDLE_MHZ: Readonly<Record<Service, number>> = {
  fm: 98,
  dab: 210,
  tv: 580,
  distant: 580,
  mobile: 780,
  cordless: 1890,
  satellite: 1500,
};

/** Filters that take more than this, and the input is meant for something else [dB]; our choice. */
const MEANT_FOR_DB = -15;

/** By whichever output, or by a given one. */
export function passesService(record: PartRecord, input: string, service: Service, output?: string): boolean {
  const port = record.ports.find((p) => p.id === input);
  if (port?.medium === "sky") return service === "satellite";
  const { paths = [] } = record.kind.signal(record.options, { id: record.part.id, powered: true });
  return paths.some(
    (path) =>
      path.from === input &&
      (output === undefined || path.to === output) &&
      path.loMHz === undefined &&
      isMeantFor(path.response, service),
  );
}

/** Whether the filters of a way let a service pass, whatever the way loses or adds. */
export function isMeantFor(response: Response, service: Service): boolean {
  return filteredDb(response, MIDDLE_MHZ[service]) > MEANT_FOR_DB;
}

/** What the filters of a way do at a frequency, without its gains and losses [dB]. */
function filteredDb(response: Response, f: number): number {
  if (response.type === "series") return response.of.reduce((sum, one) => sum + filteredDb(one, f), 0);
  return response.type === "windows" || response.type === "notch" ? gainDbAt(response, f) : 0;
}
