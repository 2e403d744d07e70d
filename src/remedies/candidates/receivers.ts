/** A receiver that suits the feed it gets. */
import { CATALOGUE, defaultOptions } from "../../parts/catalogue.ts";
import type { PartKind } from "../../parts/contract.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { outputFeed } from "../../parts/outputFeed.ts";
import type { FeedKind } from "../../parts/trade.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type SatelliteInput, type Site, satelliteInputs } from "../site.ts";
import { assignUserBands, setUserBands } from "./userBands.ts";

/** What an output of a converter gives. */
export function feedGiven({ feeding }: SatelliteInput): FeedKind | undefined {
  return outputFeed(feeding.converter.kind, feeding.converter.power, feeding.port);
}

/** Another receiver in its place, or all that do not suit their feed together. */
export const otherReceiver: Idea = (site, finding) => {
  const unsuited = satelliteInputs(site).filter((input) => suitable(input) !== null);
  const named = unsuited.filter((i) => finding.parts.includes(i.receiver.part.id));
  const converters = new Set(named.map((i) => i.feeding.converter.part.id));
  const together = unsuited.filter((i) => converters.has(i.feeding.converter.part.id));
  const single = onePerReceiver(named);
  const all = onePerReceiver(together);
  return [...single.map((i) => replaced(site, [i])), ...(all.length > 1 ? [replaced(site, all)] : [])];
};

function onePerReceiver(inputs: readonly SatelliteInput[]): readonly SatelliteInput[] {
  return inputs.filter(
    (input, i) => inputs.findIndex((o) => o.receiver.part.id === input.receiver.part.id) === i,
  );
}

/** Kind that suits the feed; null where the receiver is of that kind, or the feed suits none. */
function suitable(input: SatelliteInput): PartKind | null {
  const { receiver } = input;
  const feed = feedGiven(input);
  if (receiver.kind.trade.takes === feed) return null;
  const joined = receiver.ports.filter((p) => p.side === "in" && receiver.joined[p.id]).length;
  const kinds = RECEIVERS.filter(({ kind }) => kind.trade.takes === feed);
  return (kinds.find(({ inputs }) => inputs >= joined) ?? kinds[0])?.kind ?? null;
}

/** Satellite receivers, those with the fewest inputs first. */
const RECEIVERS = CATALOGUE.filter((kind) => kind.trade.takes !== undefined)
  .map((kind) => ({ kind, inputs: kind.reception?.(defaultOptions(kind)).inputs.length ?? 0 }))
  .sort((a, b) => a.inputs - b.inputs);

function replaced(site: Site, inputs: readonly SatelliteInput[]): Candidate {
  const ids = inputs.map((i) => i.receiver.part.id);
  const [first] = inputs;
  const kind = first ? suitable(first) : null;
  // Only receivers that do not suit come here.
  return candidate(
    "other-receiver",
    [ids.join("+")],
    { receivers: ids, kind: kind?.kind ?? "" },
    (design) => {
      const d = draft(design);
      for (const input of inputs) {
        const to = suitable(input);
        if (to) d.swap(input.receiver.part.id, to.kind);
      }
      const rows = bandsOf(site, inputs);
      if (rows === null) return null;
      setUserBands(d, rows);
      return d.result();
    },
  );
}

/** User bands for those that become single-cable receivers, beside those that others on the line use. */
function bandsOf(site: Site, inputs: readonly SatelliteInput[]) {
  const given = new Map<string, readonly { number: number; centreMHz: number }[]>();
  const used = new Map<string, Set<number>>();
  for (const input of inputs) {
    if (suitable(input)?.trade.takes !== "stacked") continue;
    const { converter, port } = input.feeding;
    const line = `${converter.part.id}.${port}`;
    const taken = used.get(line) ?? new Set(usedOn(site, converter.part.id, port));
    used.set(line, taken);
    const stack = converter.kind
      .signal(converter.options, { id: converter.part.id, powered: true })
      .stacks?.find((s) => s.to === port);
    const free = (stack?.userBands ?? []).filter((b) => !taken.has(b.number));
    const rows = assignUserBands([{ receiver: input.receiver.part.id, tuners: 2 }], free)?.get(
      input.receiver.part.id,
    );
    if (!rows) return null;
    for (const row of rows) taken.add(row.number);
    given.set(
      input.receiver.part.id,
      rows.map(({ number, centreMHz }) => ({ number, centreMHz })),
    );
  }
  return given;
}

function usedOn(site: Site, converter: string, port: string): readonly number[] {
  const state = site.evaluation.record(converter)?.switches[port];
  return state?.offers.flatMap((o) => o.request?.userBands ?? []) ?? [];
}

/** A tuner for cable television, at a set that has none and hangs on a cable network. */
export const cableTuner: Idea = (site, finding) => {
  if (!("missing" in finding.facts) || finding.facts.missing.reason.kind !== "no tuner for it") return [];
  const record = site.evaluation.record(finding.at.part);
  const key = record && optionMeaning(record.kind, "cable tuner");
  if (!record || key === undefined || record.options[key] === true) return [];
  const { id } = record.part;
  return [
    candidate("cable-tuner", [id], {}, (design) => {
      const d = draft(design);
      d.set(id, { [key]: true });
      return d.result();
    }),
  ];
};
