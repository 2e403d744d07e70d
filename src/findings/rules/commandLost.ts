import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { SwitchDeclaration } from "../../parts/contract.ts";
import { type Offer, type PositionCommand, positionAsked, type SwitchState } from "../../signal/control.ts";
import {
  commandTurnedAway,
  SURELY_HORIZONTAL_VOLTS,
  SURELY_VERTICAL_VOLTS,
  type WrongInput,
} from "../commandStop.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { walkSupply } from "../walk/supply.ts";
import { supplyWay } from "../walk/supplyWay.ts";
import { type VoltsLost, voltsLost } from "../walk/voltsLost.ts";

export type CommandLostFacts =
  /** 18 V that arrive too low: surely lost, or between the two limits, where each converter decides for itself. */
  | {
      readonly kind: "too low" | "undecided";
      readonly receiver: PartId;
      /** On a single-cable line the 18 V carry the messages. */
      readonly carries: "horizontal" | "messages";
      readonly lost: VoltsLost;
    }
  /** 13 V that arrive so high that they may be taken for 18 V. */
  | { readonly kind: "too high"; readonly receiver: PartId }
  /** No command at all comes to the switch that the receiver's signal comes from. */
  | {
      readonly kind: "no command";
      readonly receiver: PartId;
      readonly switch: PartId;
      /** The culprit hands them on to another input than the one that the switch is joined to. */
      readonly wrongInput?: WrongInput;
    }
  /** A switch is asked for no position, though it has several. */
  | {
      readonly kind: "no position";
      readonly receiver: PartId;
      readonly positions: number;
      /** The command that the switch waits for. */
      readonly command: PositionCommand;
    }
  /** A position is asked for that the switch does not have. */
  | {
      readonly kind: "no such position";
      readonly receiver: PartId;
      readonly asked: number;
      readonly positions: number;
    }
  /** The tone of 22 kHz, and all that is said by it, does not arrive. */
  | {
      readonly kind: "no tone";
      readonly receiver: PartId;
      readonly carries: "high band" | "messages" | "position";
    };

type Kind = SwitchDeclaration["by"];

/** 18 V that arrives too low to select horizontal, and tone that does not arrive. */
export const commandLost: RuleOf<"command-lost"> = {
  id: "command-lost",
  check: ({ record }) => {
    const atSwitches = (record.power.switches ?? []).flatMap(
      ({ port, by, positions, heeds = "committed" }) => {
        const state = record.switches[port];
        const heard = (state?.offers ?? []).filter((o) => o.kind === "commands" && o.volts18 > 0);
        return heard.flatMap((offer) => [
          ...tooFewVolts(record, { port, by, offer }, state?.thresholdVolts ?? 0),
          ...toneLost(record, { port, by, offer }, heeds),
          ...noPosition(record, { port, by, offer }, heeds),
          ...noSuchPosition(record, { port, by, offer }, { positions, heeds }),
        ]);
      },
    );
    // A unit for quad LNBs asks as a receiver does.
    const asks = record.kind.reception !== undefined || record.power.switches !== undefined;
    const supplies = asks ? (record.power.supplies ?? []) : [];
    return [...atSwitches, ...supplies.flatMap(({ port, kind }) => unheard(record, port, kind))];
  },
  blame: (draft, evaluation) => {
    const { facts } = draft;
    const { part, port = "" } = draft.at;
    if (facts.kind === "no position" || facts.kind === "no such position") return draft;
    if (facts.kind === "no command") {
      const away = commandTurnedAway(evaluation, { receiver: part, input: port, target: facts.switch });
      if (away) {
        const { wrongInput } = away;
        return {
          ...draft,
          parts: culpritFirst(away.part, [part, facts.switch]),
          facts: { ...facts, wrongInput },
        };
      }
      const steps = walkSupply(evaluation, { part, port });
      // A part that lives on the supply and hands nothing on stops the commands as well.
      const end =
        steps.find((s) => s.end === "shorted") ??
        steps.find((s) => s.end === "blocked") ??
        steps.find((s) => s.needsVolts !== undefined && s.end !== undefined && s.part !== facts.switch);
      return { ...draft, parts: culpritFirst(end?.part ?? part, [part, facts.switch]) };
    }
    const state = evaluation.record(part)?.switches[port];
    const offer = state && offerOf(state, draft);
    if (!offer) return draft;
    const at = { part, port };
    if (facts.kind === "no tone") {
      const stops = supplyWay(evaluation, at, offer).findLast((step) => !step.tone);
      return { ...draft, parts: culpritFirst(stops?.part ?? facts.receiver, [part, facts.receiver]) };
    }
    if (facts.kind === "too high") return draft;
    const lost = voltsLost(evaluation, at, { offer, asked: "volts18", needs: SURELY_HORIZONTAL_VOLTS });
    const culprit = lost.taker?.part ?? facts.receiver;
    return { ...draft, parts: culpritFirst(culprit, [part, facts.receiver]), facts: { ...facts, lost } };
  },
};

type Heard = { readonly port: string; readonly by: Kind; readonly offer: Offer };

/** Who speaks: several receivers may reach one switch. */
function speakerKey({ part, port }: Offer): string {
  return `${part}.${port}`;
}

function offerOf(state: SwitchState, { at }: Draft<"command-lost">): Offer | undefined {
  return state.offers.find((offer) => speakerKey(offer) === at.band);
}

function tooFewVolts(
  record: PartRecord,
  { port, by, offer }: Heard,
  thresholdVolts: number,
): readonly Draft<"command-lost">[] {
  // A position switch is told by the tone alone.
  if (by === "position") return [];
  const part = record.part.id;
  const receiver = offer.part;
  const common = {
    parts: culpritFirst(receiver, [part]),
    wires: wireIdsAt(record, port),
    unit: "V",
  };
  const at = { part, port, band: speakerKey(offer) };
  // Who gives one voltage only never asks for the other polarisation.
  const never =
    offer.volts13 === offer.volts18 ? (offer.request?.polarisation === "V" ? "H" : "V") : undefined;
  if (never !== "H" && offer.volts18 < SURELY_HORIZONTAL_VOLTS) {
    const isLost = offer.volts18 < SURELY_VERTICAL_VOLTS;
    const lost = {
      supply: receiver,
      givenVolts: offer.volts18 + offer.dropVolts,
      spareVolts: offer.volts18 - SURELY_HORIZONTAL_VOLTS,
    };
    return [
      {
        ...common,
        // Where it may or may not be heard, the LNB's own threshold tells what the receiver gets here.
        severity: offer.volts18 <= thresholdVolts && by !== "stack" ? "error" : "warning",
        at: { ...at, side: "too little" },
        value: offer.volts18,
        limit: SURELY_HORIZONTAL_VOLTS,
        facts: {
          kind: isLost ? "too low" : "undecided",
          receiver,
          carries: by === "stack" ? "messages" : "horizontal",
          lost,
        },
      },
    ];
  }
  if (by === "stack" || never === "V" || offer.volts13 <= SURELY_VERTICAL_VOLTS) return [];
  return [
    {
      ...common,
      severity: "warning",
      at: { ...at, side: "too much" },
      value: offer.volts13,
      limit: SURELY_VERTICAL_VOLTS,
      facts: { kind: "too high", receiver },
    },
  ];
}

/** A receiver whose signal comes from a switch that does not hear it. */
function unheard(record: PartRecord, port: string, kind: Offer["kind"]): readonly Draft<"command-lost">[] {
  if (kind !== "commands") return [];
  const part = record.part.id;
  const isOwn = (o: Offer) => o.part === part && o.port === port;
  const switches = (record.inputs[port]?.bands ?? []).flatMap((band) => [
    ...band.conditions.map(({ at }) => at),
    ...(band.stack ? [band.stack.control] : []),
  ]);
  // A multiswitch takes commands for itself and holds the LNB above it as it likes.
  const deaf = switches.some((state) => state.offers.some(isOwn)) ? undefined : switches[0]?.part;
  if (deaf === undefined) return [];
  return [
    {
      severity: "error",
      at: { part, port },
      parts: culpritFirst(part, [deaf]),
      wires: wireIdsAt(record, port),
      facts: { kind: "no command", receiver: part, switch: deaf },
    },
  ];
}

function noPosition(
  record: PartRecord,
  { port, by, offer }: Heard,
  command: PositionCommand,
): readonly Draft<"command-lost">[] {
  const isSent =
    positionAsked(offer.request, command) !== undefined || offer.request?.userBands !== undefined;
  const positions = positionsInUse(record, by);
  if (isSent || positions < 2) return [];
  const part = record.part.id;
  return [
    {
      severity: "error",
      at: { part, port, band: speakerKey(offer) },
      parts: culpritFirst(offer.part, [part]),
      wires: wireIdsAt(record, port),
      facts: { kind: "no position", receiver: offer.part, positions, command },
    },
  ];
}

/** Of how many satellites or LNBs something is connected to a switch. */
function positionsInUse({ ports, joined }: PartRecord, by: Kind): number {
  const inputs = ports.filter((p) => p.side === "in" && joined[p.id]);
  if (by === "position") return inputs.length;
  if (by !== "both") return 0;
  const satellites = inputs.flatMap(({ id, role, plane }): readonly (string | number)[] => {
    if (role === "beam") return [id];
    return plane ? [plane.position] : [];
  });
  return new Set(satellites).size;
}

function noSuchPosition(
  record: PartRecord,
  { port, by, offer }: Heard,
  { positions, heeds }: { readonly positions: number; readonly heeds: PositionCommand },
): readonly Draft<"command-lost">[] {
  const asked = positionAsked(offer.request, heeds) ?? 1;
  const heedsIt = by === "position" || by === "both";
  if (!heedsIt || asked <= positions || !offer.toneArrives) return [];
  const part = record.part.id;
  const receiver = offer.part;
  return [
    {
      severity: "error",
      at: { part, port, band: speakerKey(offer) },
      parts: culpritFirst(receiver, [part]),
      wires: wireIdsAt(record, port),
      facts: { kind: "no such position", receiver, asked, positions },
    },
  ];
}

function toneLost(
  record: PartRecord,
  { port, by, offer }: Heard,
  heeds: PositionCommand,
): readonly Draft<"command-lost">[] {
  // An LNB that only switches the polarisation does not care for the tone.
  if (by === "polarisation") return [];
  const isAsked = by !== "position" || positionAsked(offer.request, heeds) !== undefined;
  if (offer.toneArrives || !isAsked) return [];
  const part = record.part.id;
  return [
    {
      severity: "error",
      at: { part, port, band: speakerKey(offer) },
      parts: culpritFirst(offer.part, [part]),
      wires: wireIdsAt(record, port),
      facts: {
        kind: "no tone",
        receiver: offer.part,
        carries: by === "stack" ? "messages" : by === "position" ? "position" : "high band",
      },
    },
  ];
}
