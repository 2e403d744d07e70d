/** A stacking converter under the roof: one cable to each room carries satellite user bands and terrestrial TV. */
import type { PortRef } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { feedingOf, inputsBehind, type SatelliteInput, type Site, satelliteInputs } from "../site.ts";
import { lnbsOf } from "./converters.ts";
import { linesFrom, stackReceivers, userBandsSent } from "./userBands.ts";

/** A line from an LNB to a room, and the part at which terrestrial signals come onto it. */
export type RoomLine = {
  readonly port: string;
  readonly inputs: readonly SatelliteInput[];
  /** The first part of the line that is to stay. */
  readonly start: PortRef;
  readonly joiner?: { readonly id: string; readonly terrestrial: PortRef };
};

/** Lines of an LNB, each with whatever combines it with an aerial. */
export function roomLines(site: Site, lnb: PartRecord): readonly RoomLine[] {
  return [...linesFrom(site, lnb.part.id)].flatMap(([port, inputs]): RoomLine[] => {
    const [first] = inputs;
    const start = lnb.joined[port];
    if (!first || !start) return [];
    const step = [...first.feeding.between].reverse().find(({ record }) => bringsTogether(record));
    if (!step) return [{ port, inputs, start }];
    const other = inputsBehind(step.record, step.out).find(
      (p) => p !== step.in && step.record.joined[p] && !isSatellite(site, step.record, p),
    );
    const terrestrial = other === undefined ? undefined : step.record.joined[other];
    const after = step.record.joined[step.out];
    if (!terrestrial || !after) return [{ port, inputs, start }];
    return [{ port, inputs, start: after, joiner: { id: step.record.part.id, terrestrial } }];
  });
}

function bringsTogether(record: PartRecord): boolean {
  return record.kind.trade.job === "combiner";
}

function isSatellite(site: Site, record: PartRecord, port: string): boolean {
  return feedingOf(site, [record.part.id, port]) !== undefined;
}

/** Level of the user bands, which is set at the unit: within the limits on short drops too [dBµV]; from memory. */
const LEVEL_DBUV = 76;

/** So many flats are asked to change their receivers, no more. */
const MOST_LINES = 16;

/** A stacking unit where a multiswitch was: one cable to each flat then serves all its tuners. */
export const stackForSwitch: Idea = (site, finding) => {
  // Open inputs of the unit itself get their leads; another unit would only let the receivers forget them.
  const place = site.evaluation.record(finding.at.part);
  if (finding.rule === "not-connected" && !place?.kind.reception) return [];
  const units = new Map<string, PartRecord>();
  for (const { receiver, feeding } of satelliteInputs(site)) {
    const { part, kind, options } = feeding.converter;
    const isMeant = finding.parts.includes(receiver.part.id) || finding.parts.includes(part.id);
    if (isMeant && kind.trade.job === "switch unit" && kind.trade.gives === "switched" && !options.cascade)
      units.set(part.id, feeding.converter);
  }
  return [...units.values()].flatMap((unit): Candidate[] => {
    const { id } = unit.part;
    const lines = [...linesFrom(site, id).values()].map((l) => [
      ...new Set(l.map((i) => i.receiver.part.id)),
    ]);
    const positions = Math.max(...unit.ports.map((p) => p.plane?.position ?? 1));
    if (lines.length === 0 || lines.length > MOST_LINES || positions > 2) return [];
    const shared = Object.keys(unit.options).filter((key) => key.startsWith("terrestrial"));
    const options = Object.fromEntries(shared.map((key) => [key, unit.options[key]]));
    const outputs = unit.ports.filter((p) => p.side === "out").length;
    return [
      candidate("stack-for-switch", [id], { receivers: lines.flat() }, (design) => {
        const d = draft(design);
        d.swap(id, "stacking-converter", {
          ...options,
          satellites: String(positions),
          outputs,
          stackDbuv: LEVEL_DBUV,
        });
        return stackReceivers(d, lines, userBandsSent(d.part(id))) ? d.result() : null;
      }),
    ];
  });
};

export const stackUnderTheRoof: Idea = (site, finding) =>
  lnbsOf(site, finding.parts)
    .filter((lnb) => lnb.kind.trade.gives === "wideband")
    .flatMap((lnb): Candidate[] => {
      const lines = roomLines(site, lnb);
      if (lines.length === 0 || lines.length > 16) return [];
      const { id } = lnb.part;
      return [
        candidate("stack-under-roof", [id], {}, (design) => {
          const d = draft(design);
          const [x = 0, y = 0] = d.part(id)?.at ?? [];
          for (const line of lines) {
            d.unjoin([id, line.port]);
            if (line.joiner) d.remove(line.joiner.id);
          }
          const terrestrial = lines.find((l) => l.joiner)?.joiner?.terrestrial;
          const stack = d.put(
            "stacking-converter",
            {
              feed: "wideband",
              outputs: lines.length,
              terrestrial: terrestrial !== undefined,
              terrestrialBuild: "active",
            },
            [x + 376, y],
          );
          d.join([id, "v"], [stack, "v"]);
          d.join([id, "h"], [stack, "h"]);
          if (terrestrial) d.join(terrestrial, [stack, "ter"]);
          lines.forEach((line, i) => {
            d.join([stack, lines.length > 1 ? `out${i + 1}` : "out"], line.start);
          });
          const receivers = lines.map((l) => [...new Set(l.inputs.map((i) => i.receiver.part.id))]);
          const bands = userBandsSent(d.part(stack));
          return stackReceivers(d, receivers, bands) ? d.result() : null;
        }),
      ];
    });
