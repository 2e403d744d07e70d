import type { PartId } from "../../design/design.ts";
import type { Drive, PartRecord } from "../../evaluate/evaluation.ts";
import { HOPELESS_DB } from "../../evaluate/overload.ts";
import type { DeratingRule } from "../../rf/intermod.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { cnDb, isLive, marginDb } from "../../signal/readout.ts";
import { isByGain } from "../blame/choose.ts";
import { blameForOverload } from "../blame/overload.ts";
import { wayGainDb } from "../blame/shortcomings.ts";
import { extreme } from "../extreme.ts";
import { isFormer } from "../former.ts";
import { type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type OverloadFacts = {
  /** What the load amounts to: so many equal carriers, and all power together [dBµV]. */
  readonly carriers: number;
  readonly totalDbuv: number;
  readonly rule: DeratingRule;
  /** Its products lie so far below the carriers [dB]. */
  readonly ratioDb: number;
  /** Wanted carriers that are lost in the products. */
  readonly drowned: readonly { readonly service: Service; readonly count: number }[];
  /** Who makes up the power, the greatest first. */
  readonly load: readonly LoadShare[];
  /** Gain of the driven way [dB]. */
  readonly gainDb: number;
  /**
   * What must change: "foreign": signals that nobody wants make most of the load; "gain": this part amplifies too
   * much; "input": more comes in than it can take even without any gain, from the culprit.
   */
  readonly because: "foreign" | "gain" | "input";
};

export type LoadShare = { readonly service: Service; readonly part: PartId; readonly share: number };

/** An amplifier or converter driven past its rated output. */
export const overload: RuleOf<"overload"> = {
  id: "overload",
  check: ({ record }) => {
    // What comes into a stacking stage is another rule's.
    const stages = new Set(
      record.treatment.paths?.flatMap(({ rating, from, to }) => (rating?.isInput ? [`${from}>${to}`] : [])),
    );
    const drive = extreme(
      record.drives.filter((d) => !stages.has(`${d.from}>${d.port}`)),
      (d) => d.levelDbuv - d.allowedDbuv,
    );
    if (!drive || drive.levelDbuv <= drive.allowedDbuv) return [];
    const drowned = drownedIn(record);
    const load = loadOf(record, drive);
    const foreign = load.filter((l) => !isWanted(l.service)).reduce((sum, l) => sum + l.share, 0);
    const over = drive.levelDbuv - drive.allowedDbuv;
    const gainDb = gainOf(record, drive);
    const strongest = load.find((l) => !isWanted(l.service))?.part;
    const isForeign = foreign > 0.5 && strongest !== undefined;
    return [
      {
        severity: drowned.length > 0 || over > HOPELESS_DB ? "error" : "warning",
        at: { part: record.part.id, port: drive.port },
        parts: isForeign ? [record.part.id, strongest] : [record.part.id],
        wires: drive.port.startsWith("#") ? [] : wireIdsAt(record, drive.port),
        value: drive.levelDbuv,
        limit: drive.allowedDbuv,
        unit: "dBµV",
        facts: {
          carriers: drive.carriers,
          totalDbuv: drive.totalDbuv,
          rule: drive.rule,
          ratioDb: drive.ratioDb,
          drowned,
          load,
          gainDb,
          because: isForeign ? "foreign" : isByGain(gainDb, over) ? "gain" : "input",
        },
      },
    ];
  },
  blame: keptFor((draft, evaluation) => blameForOverload(evaluation, draft)),
};

function isWanted(service: Service): boolean {
  return WANTED_SERVICES.some((s) => s === service);
}

/** Shares of the power behind the driven way, by service and source; of alternatives the present one. */
function loadOf(record: PartRecord, drive: Drive): readonly LoadShare[] {
  const came = record.inputs[drive.from]?.bands.map((b) => b.origin.key);
  const port = outputOf(record, drive.port);
  const powers = new Map<string, { service: Service; part: PartId; power: number }>();
  for (const band of record.outputs[port ?? ""]?.bands ?? []) {
    const { key, service, part } = band.origin;
    if (!band.selected || band.isFloor || (came && !came.includes(key))) continue;
    const power = band.level.reduce((sum, level) => sum + 10 ** (level / 10), 0);
    const id = `${service}@${part}`;
    powers.set(id, { service, part, power: power + (powers.get(id)?.power ?? 0) });
  }
  const total = [...powers.values()].reduce((sum, { power }) => sum + power, 0);
  return [...powers.values()]
    .map(({ power, ...from }) => ({ ...from, share: power / total }))
    .sort((a, b) => b.share - a.share || (a.part < b.part ? -1 : 1));
}

/** How much its strongest carrier gains on the way to the driven output [dB]. */
function gainOf(record: PartRecord, drive: Drive): number {
  const port = outputOf(record, drive.port);
  let gain = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (const band of record.outputs[port ?? ""]?.bands ?? [])
    band.level.forEach((level, i) => {
      if (level <= most) return;
      for (const [from, { bands }] of Object.entries(record.inputs)) {
        const entry = band.grid.index[i] ?? -1;
        const same = bands.find((b) => b.origin.key === band.origin.key && b.grid.index.includes(entry));
        const at = same?.grid.index.indexOf(entry) ?? -1;
        if (!same || at < 0) continue;
        most = level;
        // What comes out is held down where the part is driven far: the way itself tells what it would add.
        const way = { from, to: drive.port, centreMHz: same.grid.centre[at] ?? 0 };
        gain = wayGainDb(record.treatment.paths ?? [], way) ?? level - (same.level[at] ?? 0);
      }
    });
  return gain;
}

/** The driven output; behind an inner stage the first output that is joined. */
function outputOf(record: PartRecord | undefined, port: string | undefined): string | undefined {
  if (!port?.startsWith("#")) return port;
  return record?.ports.find((p) => p.side === "out" && record.joined[p.id])?.id;
}

/** Wanted carriers that leave the part with enough C/N, but too little against what disturbs them, by service. */
function drownedIn(record: PartRecord): OverloadFacts["drowned"] {
  const drowned = new Map<Service, Set<string>>();
  for (const { bands } of Object.values(record.outputs))
    for (const band of bands) {
      const { service, key } = band.origin;
      if (!isWanted(service)) continue;
      for (let i = 0; i < band.level.length; i++) {
        if (
          isFormer(band, i) ||
          !isLive(band, i) ||
          marginDb(band, i) >= 0 ||
          cnDb(band, i) < (band.grid.required[i] ?? 0)
        )
          continue;
        drowned.set(service, (drowned.get(service) ?? new Set()).add(`${key}#${band.grid.index[i]}`));
      }
    }
  return [...drowned].map(([service, set]) => ({ service, count: set.size }));
}
