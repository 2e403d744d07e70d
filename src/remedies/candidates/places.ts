/** Where a finding was made: the part, the input by which the signal comes, the service it speaks of. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding } from "../../findings/finding.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { inputsBehind, type Site } from "../site.ts";

export type CurePlace = { readonly part: PartRecord; readonly input: string; readonly service: Service };

/** Undefined for a part that is gone, or that nothing comes into. */
export function curePlaceOf(site: Site, finding: Finding): CurePlace | undefined {
  const part = site.evaluation.record(finding.at.part);
  if (!part) return undefined;
  const port = portOf(part, finding);
  const isOutput = part.ports.some((p) => p.id === port && p.side === "out");
  const service = finding.at.service ?? loadingService(finding);
  const input = isOutput || port === undefined ? firstInput(part, port, service) : port;
  if (input === undefined) return undefined;
  return { part, input, service: service ?? mainService(part, port ?? input) };
}

/** What drives an amplifier most, of what somebody wants; undefined for any other finding. */
function loadingService(finding: Finding): Service | undefined {
  if (finding.rule !== "overload") return undefined;
  return finding.facts.load.find((l) => WANTED_SERVICES.some((s) => s === l.service))?.service;
}

/** The port that the finding speaks of, or that its wire ends at. */
function portOf(part: PartRecord, finding: Finding): string | undefined {
  if (part.part.id === finding.at.part && finding.at.port !== undefined) return finding.at.port;
  const ends = finding.wires.flatMap((wire) => wire.split(">"));
  const own = ends.find((end) => end.startsWith(`${part.part.id}.`));
  return own?.slice(part.part.id.length + 1);
}

function firstInput(part: PartRecord, out: string | undefined, service?: Service): string | undefined {
  const behind = out === undefined ? [] : inputsBehind(part, out);
  const joined = part.ports.filter((p) => p.side === "in" && part.joined[p.id]).map((p) => p.id);
  const carries = (port: string) =>
    part.inputs[port]?.bands.some((b) => b.origin.service === service) ?? false;
  const ways = behind.filter((p) => joined.includes(p));
  return ways.find(carries) ?? ways[0] ?? joined[0];
}

/** The service that most carriers on a port belong to. */
function mainService(part: PartRecord, port: string): Service {
  const bands = (part.inputs[port] ?? part.outputs[port])?.bands ?? [];
  const counts = new Map<Service, number>();
  for (const b of bands) counts.set(b.origin.service, (counts.get(b.origin.service) ?? 0) + b.level.length);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "tv";
}
