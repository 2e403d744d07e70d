/** The walk of a signal: from the source to a socket, with what is left of it behind every part, and where it is lost. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { CarrierId } from "../../evaluate/trace.ts";
import { type Service, type Television, televisionOf } from "../../signal/carrier.ts";
import { carrierToDb, isLive } from "../../signal/readout.ts";
import { type Limits, limitsFor, profileOf } from "../limits.ts";
import { tunerNoiseFigureDb, tunerNoiseUv2 } from "../tunerQuality.ts";
import { type Choice, chosenCarriers } from "./choice.ts";
import { type Destination, destinationOf } from "./destination.ts";
import { type Loss, lossOf, uselessAtSocket } from "./loss.ts";
import { powersAt } from "./powers.ts";
import { stepsTo, type WayStep } from "./step.ts";

export type SignalQuestion = {
  /** A receiver or an outlet. */
  readonly part: PartId;
  readonly service: Service;
  /** One of its inputs or sockets; absent: for each carrier the one that gets it best. */
  readonly port?: string;
  /** Absent: the lowest and the highest of the service, and the one in the worst state. */
  readonly carriers?: readonly CarrierId[];
};

/** A switch on the way that must stand so. */
export type Need = {
  readonly part: PartId;
  readonly port: string;
  readonly setting: string;
  /** How it stands now; null where nobody feeds it. */
  readonly now: string | null;
};

/** How one carrier comes, or fails to come. */
export type CarrierWay = {
  readonly carrier: CarrierId;
  /** "C22", "11 778 V". */
  readonly name: string;
  readonly television?: Television;
  /** On air [MHz]. */
  readonly airMHz: number;
  /** Socket or input where the way ends, or should; null where none of them is joined to anything. */
  readonly port: string | null;
  /** User band that carries it at the end. */
  readonly userBand?: number;
  readonly needs: readonly Need[];
  /** From the source on, as far as it gets. */
  readonly steps: readonly WayStep[];
  /** C/N that its modulation needs [dB]. */
  readonly requiredDb: number;
  /** What the profile asks for at the end. */
  readonly limits?: Limits;
  /** At the end of the way; absent where it does not come. C/(N+I) counts a receiver's own tuner. */
  readonly end?: {
    readonly levelDbuv: number;
    readonly cniDb: number;
    readonly marginDb: number;
    /** Noise figure of a receiver's tuner [dB]. */
    readonly tunerFigureDb?: number;
  };
  /** True when it can be received there. */
  readonly got: boolean;
  /** Where it is lost, or where its level leaves the limits. */
  readonly loss?: Loss;
};

/** Follows carriers of a service from their sources to a socket or receiver; none where no source sends any. */
export function walkSignal(evaluation: Evaluation, question: SignalQuestion): readonly CarrierWay[] {
  const record = evaluation.record(question.part);
  if (!record) return [];
  return chosenCarriers(evaluation, record, question).map((choice) =>
    wayOf(evaluation, record, question, choice),
  );
}

function wayOf(
  evaluation: Evaluation,
  record: PartRecord,
  { port, service }: SignalQuestion,
  choice: Choice,
): CarrierWay {
  const destination = destinationOf(evaluation, record, choice, port);
  const { arrives, seen, userBand } = destination;
  const limits = limitsFor(profileOf(evaluation.design), service, choice.planned.mode);
  const end = endOf(record, destination, choice);
  const at = arrives?.at ?? seen?.at;
  const steps = at ? stepsTo(evaluation, at, choice, { userBand, limits: arrives ? limits : undefined }) : [];
  const loss = lossOf(evaluation, { receiver: record, choice, destination, steps, end, limits });

  return {
    carrier: choice.carrier,
    name: choice.planned.name,
    ...televisionOf(choice.service, [choice.planned.mode]),
    airMHz: choice.planned.airMHz,
    port: destination.port,
    ...(userBand === undefined ? {} : { userBand }),
    needs: (arrives?.band.conditions ?? []).map(({ at: state, setting }) => ({
      part: state.part,
      port: state.port,
      setting,
      now: state.setting,
    })),
    steps,
    requiredDb: choice.requiredDb,
    ...(limits ? { limits } : {}),
    ...(end ? { end } : {}),
    got: isGot(record, choice, destination),
    ...(loss ? { loss } : {}),
  };
}

function endOf(
  record: PartRecord,
  { arrives, port }: Destination,
  { carrier, requiredDb }: Choice,
): CarrierWay["end"] {
  if (!arrives) return undefined;
  const { levelDbuv, noise, interference } = powersAt(arrives, carrier);
  const tunerFigureDb = port === null ? undefined : tunerNoiseFigureDb(record, port);
  const tuner = tunerFigureDb === undefined ? 0 : tunerNoiseUv2(arrives.band.grid, arrives.i, tunerFigureDb);
  const cniDb = carrierToDb(levelDbuv, noise + interference + tuner);
  return {
    levelDbuv,
    cniDb,
    marginDb: cniDb - requiredDb,
    ...(tunerFigureDb === undefined ? {} : { tunerFigureDb }),
  };
}

/** A receiver's own judgement; at an outlet that of a usual tuner there. */
function isGot(record: PartRecord, { result }: Choice, destination: Destination): boolean {
  if (result) return result.got;
  const { arrives } = destination;
  return arrives !== null && isLive(arrives.band, arrives.i) && !uselessAtSocket(record, destination);
}
