/** Whether a part that is alive now would be dead for a receiver that is on alone, or beside none that feeds. */
import type { PartId } from "../../design/design.ts";
import { designUnder } from "../../design/operatingConditions.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { supplyAlone } from "../../evaluate/supply/alone.ts";
import type { Offer } from "../../signal/control.ts";
import { isBehindLoop } from "../loopOut.ts";
import { servicesByPower } from "./needsPower.ts";

export type OnlyWithOthers = {
  /** A receiver that loses what comes through the part. */
  readonly victim: PartId;
  /** Receivers on whose supply the part lives now. */
  readonly others: readonly PartId[];
  /** The unit that falls asleep with them, where it feeds the part. */
  readonly asleep?: PartId;
  /** The victim’s own supply would come, and is too weak for all that hangs on it. */
  readonly isTooWeak?: true;
};

/** More parts below one are not searched: a receiver further away stands beside one that was met; our choice. */
const MOST_BELOW = 400;

/** The first receiver below a part that is alive by others alone; undefined where each keeps it alive, or mains does. */
export function onlyWithOthers(evaluation: Evaluation, record: PartRecord): OnlyWithOthers | undefined {
  const { load } = record.power;
  const offers = (load?.ports ?? []).flatMap((port) => record.feeds[port] ?? []);
  const enough = offers.filter(({ volts }) => volts >= (load?.minVolts ?? 0));
  const ofMains = enough.filter((offer) => isOfMains(evaluation, offer));
  if (enough.length === 0 || ofMains.some(({ sleeps }) => !sleeps)) return undefined;
  const units = ofMains.map(({ part }) => part);
  const awakeBy = new Set(units.flatMap((unit) => wakers(evaluation, unit)));
  for (const victim of listeners(evaluation, record)) {
    const id = victim.part.id;
    if (awakeBy.has(id)) continue;
    const others = [
      ...new Set([...awakeBy, ...enough.map(({ part }) => part).filter((part) => !units.includes(part))]),
    ].filter((part) => part !== id);
    // As soon as a receiver sleeps, whoever is on its loop-out feeds in its place.
    if (others.length === 0 || others.some((other) => isBehindLoop(evaluation, id, other))) continue;
    const own = enough.filter(({ part }) => part === id);
    if (own.length > 0) {
      if (isStrongAlone(evaluation, record, { own, allMa: givenBy(evaluation, offers) })) continue;
      return { victim: id, others, isTooWeak: true };
    }
    const [asleep] = units;
    return { victim: id, others, ...(asleep === undefined ? {} : { asleep }) };
  }
  return undefined;
}

/** What the supplies that come to a part give in all, to whomever [mA]. */
function givenBy(evaluation: Evaluation, offers: readonly Offer[]): number {
  const sources = new Map(offers.map(({ part, port }) => [`${part}/${port}`, { part, port }]));
  return [...sources.values()].reduce(
    (sum, { part, port }) => sum + (evaluation.record(part)?.demands[port]?.milliamps ?? 0),
    0,
  );
}

/** Whoever sits before a receiver may switch it off; a mains unit stays on. */
function isOfMains(evaluation: Evaluation, { part }: Offer): boolean {
  return evaluation.record(part)?.kind.reception === undefined;
}

/** Receivers whose supply keeps a unit awake. */
function wakers(evaluation: Evaluation, unit: PartId): readonly PartId[] {
  const record = evaluation.record(unit);
  const ports = (record?.power.supplies ?? []).flatMap(({ whileFedAt = [] }) => whileFedAt);
  return [...new Set(ports)].flatMap((port) =>
    (record?.feeds[port] ?? []).filter(({ volts }) => volts > 0).map(({ part }) => part),
  );
}

/** Receivers that are on, below a part, and want a service that it passes only while it is fed; nearest first. */
function listeners(evaluation: Evaluation, record: PartRecord): readonly PartRecord[] {
  const outputs = ({ ports }: PartRecord) => ports.filter(({ side }) => side === "out").map(({ id }) => id);
  const open = outputs(record).flatMap((port) => {
    const far = record.joined[port];
    const coming = servicesByPower(record, port);
    return far && coming.size > 0 ? [{ id: far[0], coming }] : [];
  });
  const seen = new Set([record.part.id, ...open.map(({ id }) => id)]);
  const found: PartRecord[] = [];
  for (const { id, coming } of open) {
    const below = evaluation.record(id);
    if (!below || below.looped) continue;
    if (below.kind.reception?.(below.options).wants.some((service) => coming.has(service))) found.push(below);
    for (const port of outputs(below)) {
      const far = seen.size < MOST_BELOW ? below.joined[port]?.[0] : undefined;
      if (far === undefined || seen.has(far)) continue;
      seen.add(far);
      open.push({ id: far, coming });
    }
  }
  return found;
}

/** Whether the supply of one receiver carries all alone: worked out only where its limit or its line leaves a doubt. */
function isStrongAlone(
  evaluation: Evaluation,
  { part, drawsMa, power }: PartRecord,
  { own, allMa }: { readonly own: readonly Offer[]; readonly allMa: number },
): boolean {
  const receiver = own[0]?.part ?? "";
  // It carries whatever else hangs on the line as well.
  const wholeMa = Math.max(drawsMa, allMa);
  const isSure = ({ limitMa, volts13, ohms }: Offer) =>
    limitMa >= wholeMa && volts13 - (ohms * wholeMa) / 1000 >= (power.load?.minVolts ?? 0);
  if (own.some(isSure)) return true;
  const alone = supplyAlone(designUnder(evaluation.design, { type: "one on", receiver }));
  return alone(part.id)?.powered === true;
}
