import type { PartRecord } from "../../evaluate/evaluation.ts";
import { SILENCE } from "../../signal/band.ts";
import type { Service } from "../../signal/carrier.ts";
import type { Finding } from "../finding.ts";
import { type Limits, limitsFor } from "../limits.ts";
import { type Rule, wireAt } from "../rule.ts";
import { partName, round1, share } from "../words.ts";

/** Level at a socket or a receiver outside what it should be. */
export const levelLimits: Rule = {
  id: "level-limits",
  title: "Level at a socket or receiver out of its limits",
  explain:
    "Below the least level a receiver works on a good day only; above the most it is overloaded, and more signal makes things worse.",
  source: "EN 60728-1 outlet levels, as quoted in a public table",
  check: ({ record }) => places(record).flatMap((place) => outOfLimits(record, place)),
};

type Place = {
  port: string;
  services: readonly Service[];
  spectrum: PartRecord["inputs"][string];
  where: string;
};

function places(record: PartRecord): Place[] {
  const name = partName(record.part.id);
  const sockets = record.kind.delivery?.(record.options).sockets ?? [];
  const inputs = record.kind.reception?.(record.options).inputs ?? [];
  const label = (port: string) => record.ports.find((p) => p.id === port)?.label ?? port;
  return [
    ...sockets.map((s) => ({
      ...s,
      spectrum: record.outputs[s.port] ?? SILENCE,
      where: `the ${label(s.port)} socket of ${name}`,
    })),
    ...inputs.map((i) => ({
      port: i.port,
      services: i.services,
      spectrum: record.inputs[i.port] ?? SILENCE,
      where: `the input ${label(i.port)} of ${name}`,
    })),
  ];
}

type Tally = { low: number; high: number; of: number; lowest: number; highest: number; limits: Limits };

function outOfLimits(record: PartRecord, place: Place): Omit<Finding, "rule">[] {
  const found: Omit<Finding, "rule">[] = [];
  for (const service of place.services) {
    for (const t of tally(place, service)) {
      const common = {
        severity: "warning" as const,
        parts: [record.part.id],
        wires: wireAt(record, place.port),
        unit: "dBµV",
        source: t.limits.source,
      };
      if (t.low > 0)
        found.push({
          ...common,
          message: `At ${place.where}, ${share(t.low, t.of, service)} lie below ${t.limits.minDbuv} dBµV; the lowest has ${round1(t.lowest)} dBµV.`,
          value: t.lowest,
          limit: t.limits.minDbuv,
          cure: "Lose less on the way (shorter or better cable, fewer splits), or amplify before the loss.",
        });
      if (t.high > 0)
        found.push({
          ...common,
          message: `At ${place.where}, ${share(t.high, t.of, service)} lie above ${t.limits.maxDbuv} dBµV; the highest has ${round1(t.highest)} dBµV.`,
          value: t.highest,
          limit: t.limits.maxDbuv,
          cure: `Put at least ${Math.ceil(t.highest - t.limits.maxDbuv)} dB of attenuation before it, or turn a gain down.`,
        });
    }
  }
  return found;
}

/** Counts of one service by the limits that apply; a carrier offered by several alternatives counts once. */
function tally(place: Place, service: Service): Tally[] {
  const byLimit = new Map<Limits, Tally>();
  const seen = new Set<string>();
  for (const band of place.spectrum.bands) {
    if (band.origin.service !== service) continue;
    for (let i = 0; i < band.level.length; i++) {
      const key = `${band.origin.key}#${band.grid.index[i]}`;
      const limits = limitsFor(service, band.grid.plan[band.grid.index[i] ?? 0]?.mode ?? "");
      if (!limits || band.cut[i] || seen.has(key)) continue;
      seen.add(key);
      const level = band.level[i] ?? 0;
      const t = byLimit.get(limits) ?? { low: 0, high: 0, of: 0, lowest: level, highest: level, limits };
      t.of++;
      if (level < limits.minDbuv) t.low++;
      if (level > limits.maxDbuv) t.high++;
      t.lowest = Math.min(t.lowest, level);
      t.highest = Math.max(t.highest, level);
      byLimit.set(limits, t);
    }
  }
  return [...byLimit.values()];
}
