import type { PartRecord } from "../../evaluate/evaluation.ts";
import { SILENCE, type Spectrum } from "../../signal/band.ts";
import type { Service } from "../../signal/carrier.ts";
import { isLive } from "../../signal/readout.ts";
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
  spectrum: Spectrum;
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

type Carrier = { readonly levelDbuv: number; readonly limits: Limits };

function outOfLimits(record: PartRecord, place: Place): Omit<Finding, "rule">[] {
  const found: Omit<Finding, "rule">[] = [];
  for (const service of place.services) {
    const carriers = liveCarriers(place, service);
    const common = {
      severity: "warning" as const,
      parts: [record.part.id],
      wires: wireAt(record, place.port),
      unit: "dBµV",
    };
    const low = carriers.filter((c) => c.levelDbuv < c.limits.minDbuv);
    const lowest = extreme(low, (c) => c.levelDbuv - c.limits.minDbuv);
    if (lowest)
      found.push({
        ...common,
        message: `At ${place.where}, ${share(low.length, carriers.length, service)} are too weak; the worst has ${round1(lowest.levelDbuv)} dBµV and should have ${lowest.limits.minDbuv} dBµV at least.`,
        value: lowest.levelDbuv,
        limit: lowest.limits.minDbuv,
        source: lowest.limits.source,
        cure: "Lose less on the way (shorter or better cable, fewer splits), or amplify before the loss.",
      });
    const high = carriers.filter((c) => c.levelDbuv > c.limits.maxDbuv);
    const highest = extreme(high, (c) => c.limits.maxDbuv - c.levelDbuv);
    if (highest)
      found.push({
        ...common,
        message: `At ${place.where}, ${share(high.length, carriers.length, service)} are too strong; the worst has ${round1(highest.levelDbuv)} dBµV and may have ${highest.limits.maxDbuv} dBµV at most.`,
        value: highest.levelDbuv,
        limit: highest.limits.maxDbuv,
        source: highest.limits.source,
        cure: `Put ${Math.ceil(highest.levelDbuv - highest.limits.maxDbuv)} dB of attenuation or more before it, or turn a gain down.`,
      });
  }
  return found;
}

function extreme(carriers: readonly Carrier[], spare: (c: Carrier) => number): Carrier | undefined {
  return carriers.reduce<Carrier | undefined>(
    (worst, c) => (worst && spare(worst) <= spare(c) ? worst : c),
    undefined,
  );
}

/** Live carriers of one service at a place; one offered by several alternatives counts once. */
function liveCarriers(place: Place, service: Service): Carrier[] {
  const found = new Map<string, Carrier>();
  for (const band of place.spectrum.bands) {
    if (band.origin.service !== service) continue;
    for (let i = 0; i < band.level.length; i++) {
      const index = band.grid.index[i] ?? 0;
      const limits = limitsFor(service, band.grid.plan[index]?.mode ?? "");
      if (!limits || !isLive(band, i)) continue;
      const key = `${band.origin.key}#${index}`;
      if (!found.has(key)) found.set(key, { levelDbuv: band.level[i] ?? 0, limits });
    }
  }
  return [...found.values()];
}
