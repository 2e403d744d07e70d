/** The second input of a receiver whose first one is fed by a switched output: a line of its own. */
import type { Part } from "../../design/design.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { feedingOf, lengthM, satelliteInputs } from "../site.ts";
import { cableOptions, freeOutput, outputsFor } from "./share.ts";

/** From the LNB or unit that feeds the receiver already, which gets one more output if it has none free. */
export const secondLead: Idea = (site, finding) => {
  if (finding.rule !== "not-connected" || finding.facts.kind !== "missed") return [];
  const receiver = site.evaluation.record(finding.at.part);
  const fed = satelliteInputs(site).find((input) => input.receiver === receiver);
  if (!receiver || !fed || receiver.kind.trade.takes !== "switched") return [];
  return finding.facts.ports.flatMap((port): Candidate[] => {
    const { converter, between } = fed.feeding;
    const outputs = outputsFor(converter, 1);
    if (!outputs || !feedingOf(site, [receiver.part.id, fed.port])) return [];
    const { id, at } = receiver.part;
    const plate = between.find(({ record }) => record.kind.trade.job === "plate")?.record;
    return [
      candidate("second-cable", [converter.part.id, id, port], { receiver: id }, (design) => {
        const d = draft(design);
        d.set(converter.part.id, outputs);
        const taken = (out: string) => d.other([converter.part.id, out]) !== undefined;
        const out = freeOutput(converter, d.part(converter.part.id)?.options, taken);
        const metres = Math.max(1, lengthM(between));
        const cable = d.put("cable", { ...cableOptions(between), lengthM: metres }, [at[0] - 376, at[1]]);
        d.join([converter.part.id, out], [cable, "in"]);
        if (!plate || !isForSatelliteOnly(d.part(plate.part.id))) {
          d.join([cable, "out"], [id, port]);
          return d.result();
        }
        d.swap(plate.part.id, "outlet-sat-twin");
        d.join([cable, "out"], [plate.part.id, "in2"]);
        d.join([plate.part.id, "sat2"], [id, port]);
        return d.result();
      }),
    ];
  });
};

/** A plate with one socket, in the place of which a twin plate for satellite can stand. */
function isForSatelliteOnly(plate: Part | undefined): boolean {
  const sockets = plate && (kindOf(plate.kind)?.delivery?.(plate.options).sockets ?? []);
  return sockets?.length === 1 && sockets[0]?.services.join() === "satellite";
}
