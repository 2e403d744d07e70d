/** Where a finding was made: the part, the input by which the signal comes, the service it speaks of. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Service } from "../../signal/carrier.ts";
import { inputsBehind, type Site } from "../site.ts";

export type Place = { readonly part: PartRecord; readonly input: string; readonly service: Service };

/** Words by which messages name a service, as `findings/words.ts` has them. */
const WORDS: readonly (readonly [RegExp, Service])[] = [
  [/\bTV (multiplex|socket)/, "tv"],
  [/\bDAB block/, "dab"],
  [/\bFM station/, "fm"],
  [/\bsatellite (transponder|IF)|\buser band/, "satellite"],
];

/** Undefined for a part that is gone, or that nothing comes into. */
export function placeOf(site: Site, finding: Finding): Place | undefined {
  const part = site.evaluation.record(finding.parts[0] ?? "");
  if (!part) return undefined;
  const port = portOf(part, finding);
  const isOutput = part.ports.some((p) => p.id === port && p.side === "out");
  const input = isOutput || port === undefined ? firstInput(part, port) : port;
  if (input === undefined) return undefined;
  return { part, input, service: serviceOf(finding) ?? mainService(part, port ?? input) };
}

/** The port of the part at which its wire in the finding ends. */
function portOf(part: PartRecord, finding: Finding): string | undefined {
  const ends = finding.wires.flatMap((wire) => wire.split(">"));
  const own = ends.find((end) => end.startsWith(`${part.part.id}.`));
  return own?.slice(part.part.id.length + 1) ?? socketNamed(part, finding.message);
}

/** A socket that nothing is plugged into has no wire: its label stands in the message. */
function socketNamed(part: PartRecord, message: string): string | undefined {
  const label = /^At the (.+) socket of/.exec(message)?.[1];
  return part.ports.find((p) => p.label === label && p.side === "out")?.id;
}

function firstInput(part: PartRecord, out: string | undefined): string | undefined {
  const behind = out === undefined ? [] : inputsBehind(part, out);
  const joined = part.ports.filter((p) => p.side === "in" && part.joined[p.id]).map((p) => p.id);
  return behind.find((p) => joined.includes(p)) ?? joined[0];
}

export function serviceOf(finding: Finding): Service | undefined {
  const words = finding.message.replace(/“[^”]*”/g, "");
  return WORDS.find(([word]) => word.test(words))?.[1];
}

/** The service that most carriers on a port belong to. */
function mainService(part: PartRecord, port: string): Service {
  const bands = (part.inputs[port] ?? part.outputs[port])?.bands ?? [];
  const counts = new Map<Service, number>();
  for (const b of bands) counts.set(b.origin.service, (counts.get(b.origin.service) ?? 0) + b.level.length);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "tv";
}
