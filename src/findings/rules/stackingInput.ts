import type { PartRecord } from "../../evaluate/evaluation.ts";
import { SILENCE } from "../../signal/band.ts";
import { gainDbAt } from "../../signal/gain.ts";
import { isLive } from "../../signal/readout.ts";
import type { Blamed } from "../blame/culprit.ts";
import { blameForLevel } from "../blame/level.ts";
import { extreme } from "../extreme.ts";
import type { Draft } from "../finding.ts";
import { isBeyond } from "../limits.ts";
import { type CarrierFigures, figuresOf } from "../places.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type StackingInputFacts = {
  /** How many of how many transponders at this input are out of what the stage can take. */
  readonly failing: number;
  readonly of: number;
  /** The one furthest out. */
  readonly worst: CarrierFigures;
  /** Products of those that are too strong lie so far below them [dB]; absent where they are too weak. */
  readonly ratioDb?: number;
  /** What makes it so; absent where no part stands out. */
  readonly culprit?: Blamed;
};

/** An input of a unit that makes user bands, with less or more than its gain control can take. */
export const stackingInput: RuleOf<"stacking-input"> = {
  id: "stacking-input",
  check: ({ record }) =>
    stageInputs(record).flatMap((input) => [...tooWeak(record, input), ...tooStrong(record, input)]),
  blame: keptFor((draft, evaluation) => {
    const culprit = blameForLevel(evaluation, draft);
    if (!culprit) return draft;
    return { ...draft, parts: culpritFirst(culprit.part, draft.parts), facts: { ...draft.facts, culprit } };
  }),
};

type Drafted = Draft<"stacking-input">;
type Found = CarrierFigures & { readonly shortDb: number };
type StageInput = { readonly port: string; readonly node: string; readonly carriers: readonly Found[] };

/** Inputs that lead to a stacking stage, and by how much each carrier there is below the stage's window [dB]. */
function stageInputs(record: PartRecord): readonly StageInput[] {
  const least = new Map<string, number>();
  for (const { from, leastDbuv } of record.treatment.stacks ?? [])
    for (const node of from) least.set(node, leastDbuv);
  return (record.treatment.paths ?? []).flatMap(
    ({ from: port, to: node, response, rating }): StageInput[] => {
      const leastDbuv = least.get(node);
      if (leastDbuv === undefined || !rating?.isInput) return [];
      const carriers = (record.inputs[port] ?? SILENCE).bands.flatMap((band) =>
        band.origin.service !== "satellite" || band.stack
          ? []
          : Array.from(band.grid.index).flatMap((_, i): Found[] => {
              if (!isLive(band, i) || !band.selected) return [];
              const levelDbuv = band.level[i] ?? 0;
              const shortDb = leastDbuv - levelDbuv - gainDbAt(response, band.grid.centre[i] ?? 0);
              return [{ ...figuresOf(band, i), shortDb }];
            }),
      );
      return [{ port, node, carriers }];
    },
  );
}

function tooWeak(record: PartRecord, { port, carriers }: StageInput): readonly Drafted[] {
  const failing = carriers.filter((c) => isBeyond(c.shortDb));
  const worst = extreme(failing, (c) => c.shortDb);
  if (!worst) return [];
  const { shortDb, ...figures } = worst;
  return [
    {
      severity: "warning",
      ...common(record, port, "too little"),
      value: figures.levelDbuv,
      limit: figures.levelDbuv + shortDb,
      facts: { failing: failing.length, of: carriers.length, worst: figures },
    },
  ];
}

function tooStrong(record: PartRecord, { port, node, carriers }: StageInput): readonly Drafted[] {
  const drive = extreme(
    record.drives.filter((d) => d.from === port && d.port === node),
    (d) => d.levelDbuv - d.allowedDbuv,
  );
  const over = drive ? drive.levelDbuv - drive.allowedDbuv : 0;
  const worst = extreme(carriers, (c) => c.levelDbuv);
  if (!drive || !worst || over <= 0) return [];
  // What so many equal carriers may have at the input; the strongest of unequal ones may stand out.
  const limit = worst.levelDbuv - over;
  const { shortDb: _, ...figures } = worst;
  return [
    {
      severity: "warning",
      ...common(record, port, "too much"),
      value: figures.levelDbuv,
      limit,
      facts: {
        failing: carriers.filter((c) => c.levelDbuv > limit).length,
        of: carriers.length,
        worst: figures,
        ratioDb: drive.ratioDb,
      },
    },
  ];
}

function common(record: PartRecord, port: string, side: "too little" | "too much") {
  return {
    at: { part: record.part.id, port, service: "satellite" as const, side },
    parts: [record.part.id] as const,
    wires: wireIdsAt(record, port),
    unit: "dBµV",
  };
}
