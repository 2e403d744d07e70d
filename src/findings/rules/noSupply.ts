import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import type { Offer } from "../../signal/control.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { type OnlyWithOthers, onlyWithOthers } from "../walk/onlyWithOthers.ts";
import { settingFor } from "../walk/settings.ts";
import { type SupplyStop, supplyStop } from "../walk/supplyStop.ts";
import { failingTemperatureC } from "../walk/supplyWay.ts";
import { LITTLE_TO_SPARE_VOLTS, type VoltsLost, voltsLost } from "../walk/voltsLost.ts";
import { graveness } from "../walk/whoSuffers.ts";

export type NoSupplyFacts =
  /** No volts arrive at all. */
  | { readonly kind: "unfed"; readonly stop: SupplyStop; readonly lossDb?: number }
  /** Too few volts arrive now, or would as soon as everybody asks for vertical. */
  | {
      readonly kind: "too low" | "too low for vertical";
      readonly lost: VoltsLost;
      /** Each alone would give enough for vertical; all together do not. */
      readonly isTogether?: true;
    }
  /** Enough, but not when the cables get warm. */
  | { readonly kind: "edge"; readonly lost: VoltsLost }
  /** Alive now, but not for a receiver that is on while others are off. */
  | ({ readonly kind: "only with others" } & OnlyWithOthers)
  /** Lives on a mains unit of its own, which is off. */
  | { readonly kind: "mains off"; readonly option?: string; readonly lossDb?: number };

/** Cables on a roof in the sun get this warm [°C]; our choice. */
const WARM_CABLE_C = 70;

/** A converter or amplifier that nobody supplies. */
export const noSupply: RuleOf<"no-supply"> = {
  id: "no-supply",
  check: ({ record }) => {
    const { load, selfPowered } = record.power;
    const isInUse = record.ports.some((p) => p.side === "out" && record.joined[p.id]);
    if (record.looped || !isInUse) return [];
    const part = record.part.id;
    const common = { severity: "error" as const, at: { part }, parts: [part] as const, wires: [] };
    if (!load)
      return selfPowered === false ? [{ ...common, facts: { kind: "mains off", ...lossOf(record) } }] : [];
    if (selfPowered) return [];
    const wires = load.ports.flatMap((port) => wireIdsAt(record, port));
    const figures = { wires, limit: load.minVolts, unit: "V" };
    const state = stateOf(record);
    if (!state)
      return fedBy(record).length > 0 ? [{ ...common, ...figures, severity: "warning", facts: LATER }] : [];
    if (state.kind === "unfed") {
      const stop = { why: "nothing feeds", part } as const;
      return [{ ...common, ...figures, value: 0, facts: { kind: "unfed", stop, ...lossOf(record) } }];
    }
    const { kind, volts, fed, isTogether } = state;
    const lost = {
      supply: fed.offer.part,
      givenVolts: volts + fed.offer.dropVolts,
      spareVolts: volts - load.minVolts,
    };
    return [
      {
        ...common,
        ...figures,
        severity:
          kind === "too low" || (kind === "too low for vertical" && isAskedHere(record))
            ? "error"
            : "warning",
        at: { part, port: fed.port },
        value: volts,
        facts: kind === "edge" ? { kind, lost } : { kind, lost, ...(isTogether ? { isTogether } : {}) },
      },
    ];
  },
  blame: (draft, evaluation) => {
    const { facts } = draft;
    const { part } = draft.at;
    const record = evaluation.record(part);
    if (!record) return draft;
    if (facts.kind === "only with others") {
      const found = onlyWithOthers(evaluation, record);
      if (!found) return undefined;
      const culprit = found.asleep ?? part;
      return {
        ...draft,
        parts: culpritFirst(culprit, [part, found.victim]),
        facts: { kind: facts.kind, ...found },
      };
    }
    const severity = draft.severity === "error" ? graveness(evaluation, record) : draft.severity;
    if (facts.kind === "unfed") {
      const stop = supplyStop(evaluation, part);
      // A unit that sleeps while nobody listens does what it was bought for.
      if (stop.why === "asleep" && severity !== "error") return undefined;
      // What the only receiver feeds is dead while that one is off: so it should be.
      const isAtRest =
        stop.why === "receiver off" && severity !== "error" && isInStandby(evaluation.record(stop.part));
      return {
        ...draft,
        severity: isAtRest ? "note" : severity,
        parts: partsOf(stop, part),
        facts: { ...facts, stop },
      };
    }
    if (facts.kind === "mains off") {
      const setting = settingFor(record, (power) => power.selfPowered === true);
      return { ...draft, severity, facts: { ...facts, ...(setting ? { option: setting.option } : {}) } };
    }
    return { ...lostOnTheWay(draft, record, evaluation), severity };
  },
};

/** What an amplifier takes instead of amplifying, where a signal comes through it all the same [dB]. */
function lossOf({ kind, inputs, outputs }: PartRecord): { readonly lossDb?: number } {
  if (kind.trade.job !== "amplifier" && kind.trade.job !== "mast amplifier") return {};
  const coming = Object.values(inputs).flatMap(({ bands }) => bands);
  for (const band of Object.values(outputs).flatMap(({ bands }) => bands)) {
    const before = coming.find((one) => one.origin.key === band.origin.key && one.grid === band.grid);
    const [into = Number.NaN, out = Number.NaN] = [before?.level[0], band.level[0]];
    if (Number.isFinite(into - out)) return { lossDb: into - out };
  }
  return {};
}

/** Off as its user leaves it; not unplugged, nor on and set to feed nothing. */
function isInStandby(record: PartRecord | undefined): boolean {
  const key = record && optionMeaning(record.kind, "receiver state");
  return key !== undefined && record?.options[key] === "standby";
}

/** Who loses by it, only the whole design tells. */
const LATER: NoSupplyFacts = { kind: "only with others", victim: "", others: [] };

/**
 * Whether receivers lose something with this part as soon as vertical is asked for, whatever they ask for now: they
 * choose by it, or it brings what vertical chooses, what nothing chooses, or what another of them wants meanwhile.
 */
function isAskedHere({ part, switches, power, outputs, feeds }: PartRecord): boolean {
  const own = new Set(power.load?.ports);
  const speakers = new Set(
    [...own].flatMap((port) => (feeds[port] ?? []).filter((o) => o.kind === "commands").map((o) => o.part)),
  );
  if (speakers.size === 0) return false;
  return (
    Object.values(switches).some(
      ({ port, offers }) => own.has(port) && offers.some((o) => o.kind === "commands"),
    ) ||
    Object.values(outputs).some(({ bands }) =>
      bands.some(
        (b) =>
          b.failing?.some(({ at }) => at.part === part.id) &&
          (b.origin.polarisation !== "H" || speakers.size > 1),
      ),
    )
  );
}

type Fed = { readonly port: string; readonly offer: Offer };

/** Supplies at the ports that a part may be fed by. */
function fedBy(record: PartRecord): readonly Fed[] {
  const ports = record.power.load?.ports ?? [];
  return ports.flatMap((port) => (record.feeds[port] ?? []).map((offer) => ({ port, offer })));
}

/** Volts of a supply when whoever may choose asks for vertical. */
function verticalVolts({ offer }: Fed): number {
  return offer.kind === "commands" ? offer.volts13 : offer.volts;
}

type State =
  | { readonly kind: "unfed" }
  | {
      readonly kind: "too low" | "too low for vertical" | "edge";
      readonly volts: number;
      readonly fed: Fed;
      readonly isTogether?: true;
    };

function stateOf(record: PartRecord): State | undefined {
  const { load } = record.power;
  const feds = fedBy(record);
  const now = strongest(feds, ({ offer }) => offer.volts);
  if (!load) return undefined;
  if (!now || now.volts <= 0) return record.powered ? undefined : { kind: "unfed" };
  if (!record.powered) return { kind: "too low", ...now };
  const vertical = strongest(feds, verticalVolts) ?? now;
  if (vertical.volts < load.minVolts) return { kind: "too low for vertical", ...vertical };
  const together = volts13Together(record);
  if (together !== undefined)
    return { kind: "too low for vertical", ...vertical, volts: together, isTogether: true };
  const { volts, fed } = vertical;
  const ohmicVolts = Math.min(fed.offer.dropVolts, (fed.offer.ohms * load.milliamps) / 1000);
  const spareVolts = volts - load.minVolts;
  const isTight =
    spareVolts < LITTLE_TO_SPARE_VOLTS && failingTemperatureC({ spareVolts, ohmicVolts }) <= WARM_CABLE_C;
  return isTight ? { kind: "edge", ...vertical } : undefined;
}

/** What is left when all ask for vertical at once, where each of them alone would give enough [V]. */
function volts13Together({ part, outputs }: PartRecord): number | undefined {
  for (const { bands } of Object.values(outputs))
    for (const { failing = [] } of bands)
      for (const { at } of failing) if (at.part === part.id) return at.volts;
  return undefined;
}

function strongest(feds: readonly Fed[], voltsOf: (fed: Fed) => number) {
  const best = feds.reduce<Fed | undefined>(
    (most, fed) => (most && voltsOf(most) >= voltsOf(fed) ? most : fed),
    undefined,
  );
  return best && { fed: best, volts: voltsOf(best) };
}

/** The part that takes the volts, or the supply that gives too few. */
function lostOnTheWay(
  draft: Draft<"no-supply">,
  record: PartRecord,
  evaluation: Evaluation,
): Draft<"no-supply"> {
  const { facts } = draft;
  const { part, port = "" } = draft.at;
  const volts = draft.value ?? 0;
  if (!("lost" in facts) || ("isTogether" in facts && facts.isTogether)) return draft;
  const offer = record.feeds[port]?.find(
    (o) => o.part === facts.lost.supply && (o.volts === volts || o.volts13 === volts),
  );
  if (!offer) return draft;
  const lost = voltsLost(
    evaluation,
    { part, port },
    { offer, asked: offer.volts === volts ? "volts" : "volts13", needs: draft.limit ?? 0 },
  );
  const culprit = lost.taker?.part ?? lost.supply;
  return { ...draft, parts: culpritFirst(culprit, [part, lost.supply]), facts: { ...facts, lost } };
}

function partsOf(stop: SupplyStop, victim: PartId): Draft<"no-supply">["parts"] {
  if (stop.why === "nothing above feeds" && stop.setting && stop.nearest !== undefined)
    return culpritFirst(stop.nearest, [victim]);
  return culpritFirst(stop.part, [victim, ...("supply" in stop ? [stop.supply] : [])]);
}
