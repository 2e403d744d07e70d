/** The walk of a command: which switches hear an input, who decides there, and whether it gets what it asks for. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { switchStates } from "../../evaluate/power.ts";
import type { SwitchDeclaration } from "../../parts/contract.ts";
import { type Offer, positionAsked, type Request, type SwitchState } from "../../signal/control.ts";

/** A switch that the commands of an input can reach. */
export type CommandStop = {
  readonly part: PartId;
  readonly port: string;
  /** Who asks. */
  readonly speaker: PartId;
  /** How it stands now; null where nobody feeds it. */
  readonly setting: string | null;
  /** Whose voltage decides now. */
  readonly decidedBy: PartId | null;
  /** Others that speak to this switch now. */
  readonly others: readonly PartId[];
  readonly volts: number;
  readonly toneArrives: boolean;
  /** Behind another switch that is in another position now. */
  readonly dormant: boolean;
  /** True when the switch does what this input asks for. */
  readonly granted: boolean;
} & (
  | {
      readonly kind: "switch";
      /** What the input asks for here, and what would be understood if it were alone on the line. */
      readonly asked: string;
      readonly understood: string | null;
      /** Above this voltage it takes a request as horizontal [V]. */
      readonly thresholdVolts: number;
    }
  | {
      readonly kind: "single-cable";
      /** User bands that it asks by; null where it is not in single-cable mode. */
      readonly userBands: readonly number[] | null;
      /** Whether its messages arrive and are meant for such a line. */
      readonly isUnderstood: boolean;
      /** Who keeps it from them: by the same user band, or by holding the line. */
      readonly rival?: { readonly part: PartId; readonly holdsLine: boolean };
    }
);

type Speaker = { readonly part: PartId; readonly port: string };

/** Every switch upstream that hears an input, in the order of the design. */
export function walkCommand(evaluation: Evaluation, speaker: Speaker): readonly CommandStop[] {
  return evaluation.records.flatMap((record) => stopsAt(record, speaker));
}

function stopsAt(record: PartRecord, speaker: Speaker): readonly CommandStop[] {
  const declared = record.power.switches ?? [];
  return declared.flatMap((d) => {
    const state = record.switches[d.port];
    const own = state?.offers.find((o) => o.part === speaker.part && o.port === speaker.port);
    return state && own?.request ? [stopOf(record, d, state, own, own.request)] : [];
  });
}

function stopOf(
  record: PartRecord,
  declared: SwitchDeclaration,
  state: SwitchState,
  own: Offer,
  request: Request,
): CommandStop {
  const awake = state.offers.filter((o) => !o.dormant);
  const others = awake.filter((o) => o.kind === "commands" && o !== own);
  const stop = {
    part: record.part.id,
    port: declared.port,
    speaker: own.part,
    setting: state.setting,
    decidedBy: (awake[0] ?? state.offers[0])?.part ?? null,
    others: [...new Set(others.map((o) => o.part))],
    volts: own.volts,
    toneArrives: own.toneArrives,
    dormant: own.dormant,
  };
  if (declared.by !== "stack") {
    const asked = askedSetting(declared, request);
    return {
      ...stop,
      kind: "switch",
      asked,
      understood: settingAlone(record, declared.port, own),
      thresholdVolts: state.thresholdVolts,
      granted: !own.dormant && state.setting === asked,
    };
  }
  const rival = rivalOf(others, request);
  const isUnderstood = own.toneArrives && request.userBands !== undefined;
  return {
    ...stop,
    kind: "single-cable",
    userBands: request.userBands ?? null,
    isUnderstood,
    ...(rival ? { rival: { part: rival.part, holdsLine: !rival.request?.userBands } } : {}),
    granted: isUnderstood && !own.dormant && !rival,
  };
}

/** How the switch would stand if nobody else spoke to it. */
function settingAlone(record: PartRecord, port: string, own: Offer): string | null {
  const power = record.power;
  const alone = switchStates(record.part.id, power, (p) => (p === port ? [{ ...own, dormant: false }] : []));
  return alone[port]?.setting ?? null;
}

function askedSetting({ by, heeds }: SwitchDeclaration, request: Request): string {
  const { polarisation, half } = request;
  const position = positionAsked(request, heeds) ?? 1;
  const quadrant = `${polarisation}${half === "low" ? "L" : "H"}`;
  if (by === "position") return String(position);
  if (by === "polarisation") return polarisation;
  return by === "both" ? `${position}:${quadrant}` : quadrant;
}

/** Whoever keeps a single-cable line or one of the same user bands from it. */
function rivalOf(others: readonly Offer[], { userBands = [] }: Request): Offer | undefined {
  return others.find(
    (o) => !o.request?.userBands || o.request.userBands.some((ub) => userBands.includes(ub)),
  );
}
