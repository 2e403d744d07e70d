/** A line on an output of another sort than its receivers need, led to a free output of the same unit that suits them. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Port } from "../../parts/contract.ts";
import { outputFeed } from "../../parts/outputFeed.ts";
import { candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { fedBy, type SatelliteInput, type Site, satelliteInputs } from "../site.ts";

export const otherOutput: Idea = (site, finding) => {
  const units = new Set(
    satelliteInputs(site)
      .filter(({ receiver, feeding }) =>
        [receiver, feeding.converter].some((record) => finding.parts.includes(record.part.id)),
      )
      .map(({ feeding }) => feeding.converter),
  );
  return [...units].flatMap((unit) => movesAt(site, unit));
};

function movesAt(site: Site, unit: PartRecord) {
  const outputs = unit.ports.filter((p) => p.side === "out");
  return outputs.flatMap((from) => {
    const line = fedBy(site, unit.part.id).filter((input) => input.feeding.port === from.id);
    if (line.length === 0 || doesSuit(unit, from, line)) return [];
    return outputs
      .filter((to) => !unit.joined[to.id] && doesSuit(unit, to, line))
      .map((to) => moved(unit, from.id, to.id));
  });
}

/** Whether an output gives what every receiver of a line takes; a wideband one the polarisation of that input too. */
function doesSuit(
  { kind, power }: PartRecord,
  { id, plane }: Port,
  line: readonly SatelliteInput[],
): boolean {
  const feed = outputFeed(kind, power, id);
  return line.every(({ receiver, port }) => {
    const meant = receiver.kind.reception?.(receiver.options).inputs.find((i) => i.port === port);
    const isPlane = !plane || !meant?.polarisation || meant.polarisation === plane.polarisation;
    return receiver.kind.trade.takes === feed && isPlane;
  });
}

function moved({ part: { id } }: PartRecord, from: string, to: string) {
  return candidate("other-output", [id, from, to], { from, to }, (design) => {
    const d = draft(design);
    const end = d.other([id, from]);
    if (!end) return null;
    d.unjoin([id, from]);
    d.join([id, to], end);
    return d.result();
  });
}
