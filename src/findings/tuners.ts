/** What each tuner of a satellite receiver gets, alone and together with all the others. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import type { Service } from "../signal/carrier.ts";
import type { Fates } from "./fate.ts";
import { hear } from "./listening.ts";
import { wantedCarriers } from "./wanted.ts";

/** What a set of carriers comes to for one tuner. */
export type TunerCount = { readonly got: number; readonly of: number };

/** One tuner of a receiver and what it can get. */
export type TunerReception = {
  /** Counted from 1 over all inputs. */
  readonly number: number;
  readonly input: string;
  readonly service: Service;
  /** User band that it tunes through, on a channel-stacked feed. */
  readonly userBand?: number;
  /** If nobody else on its line asked for anything. */
  readonly alone: TunerCount;
  /** With all others asking for what they ask for now. */
  readonly together: TunerCount;
};

/**
 * For each satellite tuner the transponders it can get alone and together with the others.
 * Tuners behind one switched input share its quadrant: all but the first take what the first left selected.
 */
export function tunersOf(record: PartRecord, sources: readonly PartRecord[]): readonly TunerReception[] {
  const reception = record.kind.reception?.(record.options);
  const service = "satellite";
  if (!reception?.wants.includes(service)) return [];
  const of = wantedCarriers(record, sources, service).length;
  return reception.inputs
    .filter((input) => input.services.includes(service))
    .flatMap((input) => Array.from({ length: input.tuners }, (_, k) => ({ input, k })))
    .map(({ input, k }, n) => {
      const own = input.userBands?.[k];
      const narrowed: ReceiverInput =
        input.feed === "stacked" ? { ...input, userBands: own ? [own] : [] } : input;
      const count = (alone: boolean): TunerCount => {
        const fates: Fates = new Map();
        const selectedOnly = !alone && k > 0 && input.feed === "switched";
        hear(record, { receiver: record.part.id, input: narrowed, alone, selectedOnly }, service, fates);
        return { got: [...fates.values()].filter((f) => f.got).length, of };
      };
      return {
        number: n + 1,
        input: input.port,
        service,
        ...(own ? { userBand: own.number } : {}),
        alone: count(true),
        together: count(false),
      };
    });
}
