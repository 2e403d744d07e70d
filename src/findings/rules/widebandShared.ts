import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { traceCarrier } from "../../evaluate/trace.ts";
import { type Band, SILENCE } from "../../signal/band.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { graveness } from "../walk/whoSuffers.ts";
import { askWhole, keptFor } from "../watched.ts";

export type WidebandSharedFacts = {
  /** The part that brings them together. */
  readonly joiner: PartId;
  /** Where the terrestrial signal comes from. */
  readonly terrestrial: PartId;
  /** The LNB whose feed it meets. */
  readonly converter: PartId;
  /** Whether every line of that LNB is shared in this way: then it does not suit the house. */
  readonly isEveryLine: boolean;
  /** Stretch in which both lie [MHz]. */
  readonly fromMHz: number;
  readonly toMHz: number;
};

/** A wideband feed and terrestrial TV brought onto one cable: one lies over the other, whatever joins them. */
export const widebandShared: RuleOf<"wideband-shared"> = {
  id: "wideband-shared",
  check: ({ record }) => {
    const met = meetingIn(record);
    if (!met) return [];
    const { wide, tv, out } = met;
    const centres = [...tv.grid.centre].sort((a, b) => a - b);
    return [
      {
        severity: "error",
        at: { part: record.part.id, port: out },
        parts: culpritFirst(record.part.id, [wide.origin.part, tv.origin.part]),
        wires: wireIdsAt(record, out),
        facts: {
          joiner: record.part.id,
          terrestrial: tv.origin.part,
          converter: wide.origin.part,
          isEveryLine: false,
          fromMHz: centres[0] ?? 0,
          toMHz: centres.at(-1) ?? 0,
        },
      },
    ];
  },
  blame: keptFor((draft, evaluation) => {
    const { facts } = draft;
    const converter = converterAbove(evaluation, facts.joiner);
    if (!converter) return draft;
    const isEveryLine = converter.ports.every(
      ({ id, side }) => side === "in" || !converter.joined[id] || isSharedBehind(evaluation, converter, id),
    );
    const of = converter.part.id;
    return {
      ...draft,
      severity: isForSomebody(evaluation, facts.joiner) ? draft.severity : "note",
      parts: culpritFirst(isEveryLine ? of : facts.joiner, [facts.joiner, of, facts.terrestrial]),
      facts: { ...facts, converter: of, isEveryLine },
    };
  }),
};

type Met = { readonly wide: Band; readonly tv: Band; readonly out: string };

/** Wideband feed at one input, TV within it at another one, and the output that both are meant for. */
function meetingIn(record: PartRecord): Met | undefined {
  if (record.kind.trade.job !== "combiner" || record.looped) return undefined;
  const inputs = record.ports.filter((p) => p.side === "in");
  const out = record.ports.find((p) => p.side === "out" && record.joined[p.id]);
  for (const { id } of out ? inputs : []) {
    const wide = bandAt(record, id, isWideband);
    if (!wide) continue;
    const lowest = Math.min(...wide.grid.centre);
    for (const other of inputs) {
      const tv = other.id === id ? undefined : bandAt(record, other.id, (b) => isTvAbove(b, lowest));
      if (tv && out) return { wide, tv, out: out.id };
    }
  }
  return undefined;
}

function bandAt(record: PartRecord, port: string, is: (band: Band) => boolean): Band | undefined {
  return (record.inputs[port] ?? SILENCE).bands.find((b) => !b.isFloor && b.cut.includes(0) && is(b));
}

/** A whole polarisation, brought down at once. */
function isWideband({ origin, half, shifts, stack }: Band): boolean {
  return origin.service === "satellite" && !half && !stack && shifts.length > 0;
}

function isTvAbove({ origin, grid }: Band, fromMHz: number): boolean {
  return origin.service === "tv" && grid.centre.some((centre) => centre > fromMHz);
}

/** Whether a socket or a receiver hangs behind a part: before that it is a drawing in progress. */
function isForSomebody(evaluation: Evaluation, part: PartId): boolean {
  return askWhole(evaluation, (whole) => {
    const record = whole.record(part);
    return record !== undefined && graveness(whole, record) !== "note";
  });
}

/** The part that brings down the feed that a joiner gets. */
function converterAbove(evaluation: Evaluation, joiner: PartId): PartRecord | undefined {
  const record = evaluation.record(joiner);
  for (const { id } of record?.ports.filter((p) => p.side === "in") ?? []) {
    const band = record && bandAt(record, id, isWideband);
    const far = record?.joined[id];
    if (!band || !far) continue;
    const carrier = { origin: band.origin.key, index: band.grid.index[0] ?? 0 };
    const step = traceCarrier(evaluation, { part: far[0], port: far[1] }, carrier).find(
      (s) => s.loMHz !== undefined,
    );
    return step && evaluation.record(step.part);
  }
  return undefined;
}

/** Whether some joiner lies behind an output. */
function isSharedBehind(evaluation: Evaluation, converter: PartRecord, port: string): boolean {
  const first = converter.joined[port];
  const seen = new Set(first ? [first[0]] : []);
  for (const id of seen) {
    const record = evaluation.record(id);
    if (!record) continue;
    if (meetingIn(record)) return true;
    for (const { id: out, side } of record.ports) {
      const end = side === "out" ? record.joined[out] : undefined;
      if (end) seen.add(end[0]);
    }
  }
  return false;
}
