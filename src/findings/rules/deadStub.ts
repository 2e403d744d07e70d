import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { DeadEnd } from "../../parts/contract.ts";
import { carrierStubLossDb, notchesMHz, type StubEnd, stubRangeOf } from "../../rf/stub.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { gainDbAt } from "../../signal/gain.ts";
import { isLive } from "../../signal/readout.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";

export type DeadStubFacts = {
  readonly end: StubEnd;
  /** Length of the dead cable [m]. */
  readonly lengthM: number;
  /** Carriers that lose more than 3 dB by it, the worst first: what service, its name, how much it loses [dB]. */
  readonly hit: readonly { readonly service: Service; readonly name: string; readonly lossDb: number }[];
  /** The notch nearest to the worst of them, and from one notch to the next [MHz]. */
  readonly notchMHz: number;
  readonly periodMHz: number;
  /** None of them loses so much at this length; each may where the length is a little different from what is drawn. */
  readonly isPossible?: true;
};

/** Less than this, beside what a joint of three lines loses anyway, nobody would notice [dB]. A choice of this tool. */
const HIT_DB = 3;

/** A dead end of cable on a joint of lines, which takes channels away from the leg that is in use. */
export const deadStub: RuleOf<"dead-stub"> = {
  id: "dead-stub",
  check: ({ record }) => stubsOf(record),
};

/** Whether a part hangs on a joint as a dead cable that does harm: told there, its open end is no news. */
export function deadCablesOf(record: PartRecord): readonly PartId[] {
  return stubsOf(record).flatMap(({ parts: [, ...cables] }) => cables);
}

function stubsOf(record: PartRecord): readonly Draft<"dead-stub">[] {
  const legs = record.ports.filter((p) => p.side === "out").map((p) => p.id);
  return legs.flatMap((leg): readonly Draft<"dead-stub">[] => {
    const dead = record.deadEnds[leg];
    const inUse = legs.filter((other) => other !== leg && record.joined[other] && !record.deadEnds[other]);
    const sure = dead ? hitCarriers(record, inUse, dead) : [];
    // A few centimetres move a notch from beside a channel onto it.
    const hit = dead && sure.length === 0 ? hitCarriers(record, inUse, dead, "possible") : sure;
    const [worst] = hit;
    if (!dead || !worst) return [];
    const { stub, lengthM, parts } = dead;
    const periodMHz = notchesMHz({ ...stub, end: "shorted" }, { fromMHz: 1, toMHz: 1e4 })[0] ?? 0;
    const notches = notchesMHz(stub, { fromMHz: worst.atMHz - periodMHz, toMHz: worst.atMHz + periodMHz });
    const notchMHz = notches.reduce(
      (near, f) => (Math.abs(f - worst.atMHz) < Math.abs(near - worst.atMHz) ? f : near),
      Number.POSITIVE_INFINITY,
    );
    return [
      {
        severity: "warning",
        at: { part: record.part.id, port: leg },
        parts: culpritFirst(record.part.id, parts),
        wires: wireIdsAt(record, leg),
        value: worst.lossDb,
        limit: HIT_DB,
        unit: "dB",
        facts: {
          end: stub.end,
          lengthM,
          hit: hit.map(({ service, name, lossDb }) => ({ service, name, lossDb })),
          notchMHz,
          periodMHz,
          ...(sure.length === 0 ? { isPossible: true as const } : {}),
        },
      },
    ];
  });
}

const WANTED: ReadonlySet<Service> = new Set(WANTED_SERVICES);

type Hit = DeadStubFacts["hit"][number] & { readonly atMHz: number };

/**
 * What the legs in use lose beside what the joint loses with both legs in use, the worst first. "possible": at the length near the one
 * drawn that is worst for the carrier.
 */
function hitCarriers(
  { outputs, treatment }: PartRecord,
  legs: readonly string[],
  dead: DeadEnd,
  which: "sure" | "possible" = "sure",
): readonly Hit[] {
  const found = new Map<string, Hit>();
  for (const leg of legs)
    for (const band of outputs[leg]?.bands ?? []) {
      const { service } = band.origin;
      if (!WANTED.has(service) || !band.selected) continue;
      band.grid.centre.forEach((centreMHz, i) => {
        if (!isLive(band, i)) return;
        const widthMHz = band.grid.plan[band.grid.index[i] ?? 0]?.noiseMHz ?? 0;
        const alongDb = -gainDbAt(dead.loss, centreMHz);
        const carrier = { centreMHz, widthMHz, lossDb: alongDb };
        const moreDb = which === "possible" ? stubRangeOf(dead.stub, carrier).downDb : 0;
        const lossDb = carrierStubLossDb(dead.stub, carrier) + moreDb - (treatment.isolationDb ?? 0);
        if (lossDb < HIT_DB) return;
        const name = band.stack
          ? `${band.stack.numbers[i] ?? 0}`
          : (band.grid.plan[band.grid.index[i] ?? 0]?.name ?? "");
        found.set(`${band.origin.key} ${name}`, { service, name, lossDb, atMHz: centreMHz });
      });
    }
  return [...found.values()].sort((a, b) => b.lossDb - a.lossDb);
}
