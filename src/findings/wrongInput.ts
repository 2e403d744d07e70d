/** An input that a service comes into, where another one beside it is made for it: leads of two aerials on each other's inputs. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Service } from "../signal/carrier.ts";
import { wayGainDb } from "./blame/shortcomings.ts";
import { passesService } from "./passesService.ts";

export type MisplacedLead = { readonly arrives: string; readonly meant: string };

/** So much more comes through the input that is made for a channel [dB]; well above what gains differ. A choice of this tool. */
const MADE_FOR_DB = 15;

/** By the service; or by the channels, where a part has several inputs for one service. */
export function wrongInput(record: PartRecord | undefined, service: Service): MisplacedLead | undefined {
  return record && (byService(record, service) ?? byChannels(record, service));
}

function byService(record: PartRecord, service: Service): MisplacedLead | undefined {
  const { ports, inputs } = record;
  const arrives = ports.find((p) => inputs[p.id]?.bands.some((b) => b.origin.service === service));
  if (!arrives || passesService(record, arrives.id, service)) return undefined;
  const meant = ports.find((p) => p.side === "in" && p !== arrives && passesService(record, p.id, service));
  return meant && { arrives: arrives.id, meant: meant.id };
}

/** All that comes into one input would get through another one, and does not get through this one. */
function byChannels({ ports, inputs, treatment }: PartRecord, service: Service): MisplacedLead | undefined {
  const outputs = ports.filter((p) => p.side === "out");
  const gainDb = (from: string, centreMHz: number) =>
    Math.max(
      ...outputs.map(
        ({ id: to }) => wayGainDb(treatment.paths ?? [], { from, to, centreMHz }) ?? Number.NEGATIVE_INFINITY,
      ),
    );
  const open = ports.filter((p) => p.side === "in").map((p) => p.id);
  for (const arrives of open) {
    const centres = (inputs[arrives]?.bands ?? []).flatMap((band) =>
      band.origin.service === service && !band.isFloor
        ? [...band.grid.centre].filter((_, i) => !band.cut[i])
        : [],
    );
    const meant = open.find(
      (other) =>
        other !== arrives &&
        centres.length > 0 &&
        centres.every((f) => gainDb(other, f) - gainDb(arrives, f) > MADE_FOR_DB),
    );
    if (meant !== undefined) return { arrives, meant };
  }
  return undefined;
}
