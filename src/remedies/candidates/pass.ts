/** Supply and commands stopped on the way: parts that do not hand on what arrives from below. */
import type { PartId } from "../../design/design.ts";
import { partsBeyond } from "../../design/lookup.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { describedOptions } from "../../parts/meanings.ts";
import type { Job } from "../../parts/trade.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";
import { recordsAround } from "./around.ts";
import { partAway } from "./wider.ts";

/** Makes a part that blocks pass what arrives at one of its outputs; a part that does nothing else goes. */
export const letSupplyPass: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record) => (isBlocking(site, record) ? supplyPassedOn(record) : []));

/** Supply arrives at an output and has no way on, or none to an input above which somebody waits for it. */
function isBlocking(site: Site, { ports, feeds, power, joined }: PartRecord): boolean {
  const ways = power.paths ?? [];
  const fed = ports.filter((p) => p.side === "out" && (feeds[p.id]?.length ?? 0) > 0);
  if (fed.some((p) => ways.every((way) => way.from !== p.id))) return true;
  const inputs = ports.filter((p) => p.side === "in" && p.medium === "coax" && joined[p.id]);
  return (
    fed.length > 0 &&
    inputs.some((p) => ways.every((way) => way.to !== p.id) && isAwaited(site, joined[p.id]?.[0] ?? ""))
  );
}

/** Somebody from here upwards draws current and gets none, or takes commands, which may come from elsewhere now. */
function isAwaited({ design, evaluation }: Site, above: PartId): boolean {
  return [above, ...partsBeyond(design.wires, [above], "upstream")].some((id) => {
    const record = evaluation.record(id);
    const { load, switches = [] } = record?.power ?? {};
    const isFed = load?.ports.some((port) => record?.feeds[port]?.some((offer) => offer.volts > 0)) ?? false;
    return switches.length > 0 || (load !== undefined && !isFed);
  });
}

/** Ways to make a part pass supply: its options, the most modest first, or taking it out of the line. */
export function supplyPassedOn(record: PartRecord): readonly Candidate[] {
  const { id } = record.part;
  const openings = [...describedOptions(record.kind)].flatMap(([option, { passes = [] }]) =>
    passes.filter((value) => record.options[option] !== value).map((value) => ({ option, value })),
  );
  const found = openings.map((facts) =>
    candidate("supply-path", [id, facts.option, String(facts.value)], facts, (design) => {
      const d = draft(design);
      d.set(id, { [facts.option]: facts.value });
      return d.result();
    }),
  );
  const { job } = record.kind.trade;
  if (GOES.includes(job)) return [candidate("block-away", [id], {}, partAway(id)), ...found];
  return job === "amplifier" && record.kind.inline
    ? [...found, candidate("amplifier-away", [id], {}, partAway(id))]
    : found;
}

/** Not needed where the receivers feed the line themselves. */
const GOES: readonly Job[] = ["block", "supply"];
