/** What each tuner of a satellite receiver gets, alone and together with all the others. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import type { Service } from "../signal/carrier.ts";
import type { CarrierResults, LostCarrier } from "./carrierResult.ts";
import { addInputResults } from "./inputReception.ts";
import { type MissingGroup, missingOf } from "./reception.ts";
import { type WantedCarrier, wantedCarriers } from "./wanted.ts";

/** What a set of carriers comes to for one tuner. */
export type TunerCount = { readonly got: number; readonly of: number };

/** One tuner of a receiver and what it can get. */
export type TunerReception = {
  /** Counted from 1 over all inputs. */
  readonly number: number;
  /** The first of its inputs; a wideband tuner has two. */
  readonly input: string;
  readonly inputs: readonly string[];
  readonly service: Service;
  /** User band that it tunes through, on a channel-stacked feed. */
  readonly userBand?: number;
  /** If nobody else on its line asked for anything. */
  readonly alone: TunerCount;
  /** With all others asking for what they ask for now. */
  readonly together: TunerCount;
  /** Why the rest is missing, with all others asking; nothing is said where it follows another tuner. */
  readonly missing: readonly MissingGroup[];
  /** Takes what another tuner behind the same switched input leaves selected: no tuner of its own. */
  readonly follows: boolean;
};

/**
 * For each satellite tuner the transponders it can get alone and together with the others.
 * Tuners behind one switched input share its quadrant: all but the first take what the first left selected.
 * Wideband inputs belong together: each tuner turns to either.
 */
export function tunersOf(record: PartRecord, sources: readonly PartRecord[]): readonly TunerReception[] {
  const reception = record.kind.reception?.(record.options);
  const service = "satellite";
  if (!reception?.wants.includes(service)) return [];
  const wanted = wantedCarriers(record, sources, service);
  return placesOfTuners(reception.inputs.filter((input) => input.services.includes(service))).map(
    ({ inputs, k }, n) => {
      const [first] = inputs;
      const own = first.userBands?.[k];
      const follows = k > 0 && first.feed === "switched";
      const resultsOf = (alone: boolean): CarrierResults => {
        const results: CarrierResults = new Map();
        for (const input of inputs) {
          const narrowed = input.feed === "stacked" ? { ...input, userBands: own ? [own] : [] } : input;
          const selectedOnly = !alone && follows;
          const tuned = { receiver: record.part.id, input: narrowed, alone, selectedOnly };
          addInputResults(record, tuned, service, results);
        }
        return results;
      };
      const countOf = (results: CarrierResults): TunerCount => ({
        got: wanted.reduce((sum, { key }) => sum + (results.get(key)?.got ? 1 : 0), 0),
        of: wanted.length,
      });
      const together = resultsOf(false);
      return {
        number: n + 1,
        input: first.port,
        inputs: inputs.map((i) => i.port),
        service,
        ...(own ? { userBand: own.number } : {}),
        alone: countOf(resultsOf(true)),
        together: countOf(together),
        missing: follows ? [] : missingOf(wanted, withOpenInputs(record, inputs, wanted, together)),
        follows,
      };
    },
  );
}

type TunerPlace = { readonly inputs: readonly [ReceiverInput, ...ReceiverInput[]]; readonly k: number };

function placesOfTuners(inputs: readonly ReceiverInput[]): readonly TunerPlace[] {
  const [firstWide, ...moreWide] = inputs.filter((input) => input.feed === "wideband");
  const tuners = (group: TunerPlace["inputs"]) =>
    Array.from({ length: group[0].tuners }, (_, k): TunerPlace => ({ inputs: group, k }));
  return inputs.flatMap((input) => {
    if (input.feed !== "wideband") return tuners([input]);
    return input === firstWide ? tuners([firstWide, ...moreWide]) : [];
  });
}

/** Nothing arrives at a tuner whose every input is open: that is what is said, whatever is missing. */
function withOpenInputs(
  record: PartRecord,
  inputs: TunerPlace["inputs"],
  wanted: readonly WantedCarrier[],
  results: CarrierResults,
): CarrierResults {
  if (inputs.some((input) => record.joined[input.port])) return results;
  const { port } = inputs[0];
  const part = record.part.id;
  const noLead: LostCarrier = {
    got: false,
    why: "absent",
    reason: { kind: "no lead", port },
    culprit: { part, port },
  };
  return new Map(wanted.map(({ key }) => [key, noLead]));
}
