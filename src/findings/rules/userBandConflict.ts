import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { ReceiverInput } from "../../parts/contract.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import type { SwitchState } from "../../signal/control.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { SAME_CENTRE_MHZ, standingSupply } from "../stackedReception.ts";
import { type Setting, settingFor } from "../walk/settings.ts";
import { sharedLine } from "../walk/sharedLine.ts";

/** A tuner of a receiver, counted from 1 among those of its input. */
export type TunerAt = { readonly part: PartId; readonly port: string; readonly tuner: number };

export type UserBandConflictFacts = { readonly converter: PartId } & (
  | {
      readonly kind: "twice";
      readonly userBand: number;
      readonly centreMHz?: number;
      /** Those that use it, in the order of the legs that they hang on. */
      readonly tuners: readonly TunerAt[];
    }
  /** A receiver that does not speak single-cable messages; `setting`: how it could be made to. */
  | {
      readonly kind: "wrong mode";
      /** Nobody else is on the line. */
      readonly isAlone: boolean;
      /** Nobody on the line is in single-cable mode. */
      readonly isNobody: boolean;
      readonly setting?: Setting;
    }
  /** A supply that keeps the line so high that no message is noticed; `canBeSet`: its voltage is a setting. */
  | { readonly kind: "standing volts"; readonly volts: number; readonly canBeSet: boolean }
  | { readonly kind: "no such user band"; readonly userBand: number; readonly has: readonly number[] }
  | {
      readonly kind: "other centre";
      readonly userBand: number;
      readonly hereMHz: number;
      readonly thereMHz: number;
    }
);

/** User bands used twice or not there at all, and receivers that hold a single-cable line. */
export const userBandConflict: RuleOf<"user-band-conflict"> = {
  id: "user-band-conflict",
  check: ({ record }) => {
    const stacked = (record.power.switches ?? []).filter((d) => d.by === "stack");
    const line = stacked.flatMap(({ port }) => {
      const state = record.switches[port];
      return state ? [...usedTwice(record, state), ...wrongMode(record, state), ...held(record, state)] : [];
    });
    const inputs = record.kind.reception?.(record.options).inputs ?? [];
    return [...line, ...inputs.flatMap((input) => unknownBands(record, input))];
  },
  blame: (draft, evaluation) => {
    const { facts } = draft;
    if (facts.kind === "twice") return inOrderOfLegs(draft, evaluation);
    if (facts.kind === "standing volts") {
      const by = evaluation.record(draft.at.part);
      const canBeSet = by !== undefined && optionMeaning(by.kind, "supply volts") !== undefined;
      return { ...draft, facts: { ...facts, canBeSet } };
    }
    if (facts.kind !== "wrong mode") return draft;
    const receiver = evaluation.record(draft.at.part);
    const tried =
      receiver &&
      settingFor(receiver, (power) => (power.supplies ?? []).some((s) => s.request?.userBands !== undefined));
    // Receivers that know nothing of user bands: whoever fitted such a converter for them chose the wrong one, unless
    // it has switched outputs too.
    const switches = evaluation.record(facts.converter)?.power.switches ?? [];
    if (!tried && facts.isNobody && switches.every((s) => s.by === "stack"))
      return { ...draft, parts: culpritFirst(facts.converter, [draft.at.part]), facts };
    if (!tried) return draft;
    return { ...draft, facts: { ...facts, setting: { option: tried.option, value: tried.value } } };
  },
};

type Drafted = Draft<"user-band-conflict">;

function usedTwice(record: PartRecord, state: SwitchState): readonly Drafted[] {
  const users = new Map<number, TunerAt[]>();
  for (const { part, port, request } of state.offers)
    (request?.userBands ?? []).forEach((userBand, k) => {
      users.set(userBand, [...(users.get(userBand) ?? []), { part, port, tuner: k + 1 }]);
    });
  const converter = record.part.id;
  return [...users].flatMap(([userBand, tuners]): Drafted[] => {
    const [first, ...others] = tuners;
    if (!first || others.length === 0) return [];
    const centreMHz = centreOf(record, state.port, userBand);
    return [
      {
        severity: "error",
        at: { part: converter, port: state.port, band: String(userBand) },
        parts: culpritFirst(first.part, [...others.map((t) => t.part), converter]),
        wires: wireIdsAt(record, state.port),
        value: tuners.length,
        limit: 1,
        unit: "tuners",
        facts: {
          kind: "twice",
          converter,
          userBand,
          tuners,
          ...(centreMHz === undefined ? {} : { centreMHz }),
        },
      },
    ];
  });
}

function centreOf(record: PartRecord, port: string, userBand: number): number | undefined {
  const stack = record.treatment.stacks?.find((s) => s.to === port);
  return stack?.userBands.find((band) => band.number === userBand)?.centreMHz;
}

/** The same tuners in the order of their legs, whatever the order of drawing and the volts that arrive. */
function inOrderOfLegs(draft: Drafted, evaluation: Evaluation): Drafted {
  const { at, facts } = draft;
  if (facts.kind !== "twice") return draft;
  const { speakers } = sharedLine(evaluation, { part: at.part, port: at.port ?? "" });
  const place = ({ part, port }: TunerAt) => speakers.findIndex((s) => s.part === part && s.port === port);
  const tuners = [...facts.tuners].sort((a, b) => place(a) - place(b) || a.tuner - b.tuner);
  const [first, ...others] = tuners;
  if (!first) return draft;
  return {
    ...draft,
    parts: culpritFirst(first.part, [...others.map((t) => t.part), at.part]),
    facts: { ...facts, tuners },
  };
}

function wrongMode(record: PartRecord, state: SwitchState): readonly Drafted[] {
  const converter = record.part.id;
  const speaking = state.offers.filter((o) => o.kind === "commands");
  return speaking
    .filter((o) => !o.request?.userBands)
    .map(({ part, port }) => ({
      severity: "error",
      at: { part, port },
      parts: culpritFirst(part, [converter]),
      wires: wireIdsAt(record, state.port),
      facts: {
        kind: "wrong mode",
        converter,
        isAlone: speaking.length < 2,
        isNobody: speaking.every((o) => !o.request?.userBands),
      },
    }));
}

/** A supply that stands at 18 V on a line where somebody sends messages. */
function held(record: PartRecord, state: SwitchState): readonly Drafted[] {
  const supply = standingSupply(state);
  if (!supply || !state.offers.some((o) => o.request?.userBands)) return [];
  const { part, port, volts } = supply;
  return [
    {
      severity: "error",
      at: { part, port },
      parts: culpritFirst(part, [record.part.id]),
      wires: wireIdsAt(record, state.port),
      value: volts,
      limit: state.thresholdVolts,
      unit: "V",
      facts: { kind: "standing volts", converter: record.part.id, volts, canBeSet: false },
    },
  ];
}

/** Tuners that are set to a user band that is not on their line, or that lies elsewhere there. */
function unknownBands(record: PartRecord, input: ReceiverInput): readonly Drafted[] {
  const part = record.part.id;
  // Several converters may answer on one line: who is heard by one of them on the right centre lacks nothing.
  const feeds = (record.inputs[input.port]?.bands ?? []).flatMap((band) =>
    band.stack?.control.offers.some((o) => o.part === part && o.port === input.port && o.toneArrives)
      ? [{ band, stack: band.stack }]
      : [],
  );
  const [first] = feeds;
  if (!first || input.feed !== "stacked") return [];
  const set = (input.userBands ?? []).slice(0, input.tuners);
  return set.flatMap(({ number, centreMHz }, k): Drafted[] => {
    const sent = feeds.flatMap(({ band, stack }) => {
      const thereMHz = band.grid.plan[band.grid.index[stack.numbers.indexOf(number)] ?? -1]?.airMHz;
      return thereMHz === undefined ? [] : [{ stack, thereMHz }];
    });
    if (sent.some((s) => Math.abs(s.thereMHz - centreMHz) <= SAME_CENTRE_MHZ)) return [];
    const { stack, thereMHz } = sent[0] ?? { stack: first.stack, thereMHz: undefined };
    const common = { converter: stack.part, userBand: number };
    return [
      {
        severity: "error",
        at: { part, port: input.port, tuner: k + 1 },
        parts: culpritFirst(part, [stack.part]),
        wires: wireIdsAt(record, input.port),
        ...(thereMHz === undefined ? {} : { value: centreMHz, limit: thereMHz, unit: "MHz" }),
        facts:
          thereMHz === undefined
            ? { ...common, kind: "no such user band", has: [...stack.numbers] }
            : { ...common, kind: "other centre", hereMHz: centreMHz, thereMHz },
      },
    ];
  });
}
