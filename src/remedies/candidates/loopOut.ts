/** A receiver behind the loop-out of another one: the first asleep, or a lead of its own for the second. */
import type { PartId } from "../../design/design.ts";
import { isBehindLoop, loopOutOf } from "../../findings/loopOut.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { feedingOf, lengthM, type Site } from "../site.ts";
import { set } from "./mend.ts";
import { cableOptions, freeOutput, outputsFor } from "./share.ts";

type Pair = { readonly first: PartId; readonly second: PartId };

/** Receivers that the finding is about, one on the loop-out of the other. */
function pairsOf({ evaluation }: Site, parts: readonly PartId[]): readonly Pair[] {
  const receivers = parts.filter((id) => evaluation.record(id)?.kind.reception);
  return receivers.flatMap((first) =>
    receivers.flatMap((second) =>
      second !== first && isBehindLoop(evaluation, second, first) ? [{ first, second }] : [],
    ),
  );
}

/** The first one lets go of the cable, as far as a hand on its menu or its button can make it. */
export const firstInStandby: Idea = (site, finding) =>
  pairsOf(site, finding.parts).flatMap(({ first }): Candidate[] => {
    const record = site.evaluation.record(first);
    const loop = loopOutOf(record);
    const option =
      record && optionMeaning(record.kind, loop?.state === "feeding" ? "standby supply" : "receiver state");
    if (!record || !loop || option === undefined || loop.state === "standby") return [];
    const to = loop.state === "feeding" ? false : "standby";
    return [set("mend", record, { option, from: record.options[option], to })];
  });

/** An output of the LNB or unit and a cable of its own for the second. */
export const leadInsteadOfLoop: Idea = (site, finding) =>
  pairsOf(site, finding.parts).flatMap(({ first, second }): Candidate[] => {
    const record = site.evaluation.record(first);
    const input = record?.ports.find((p) => p.side === "in")?.id ?? "";
    const feeding = feedingOf(site, [first, input]);
    const loop = record?.ports.find((p) => p.side === "out")?.id ?? "";
    const outputs = feeding && outputsFor(feeding.converter, 1);
    const end = record?.joined[loop];
    if (!record || !feeding || !outputs || !end) return [];
    const { converter, between } = feeding;
    const { id } = converter.part;
    return [
      candidate("second-cable", [id, second], { receiver: second }, (design) => {
        const d = draft(design);
        d.set(id, outputs);
        d.unjoin([first, loop]);
        const out = freeOutput(converter, d.part(id)?.options, (p) => d.other([id, p]) !== undefined);
        const metres = Math.max(1, lengthM(between));
        const [x, y] = record.part.at;
        const cable = d.put("cable", { ...cableOptions(between), lengthM: metres }, [x, y + 160]);
        d.join([id, out], [cable, "in"]);
        d.join([cable, "out"], end);
        return d.result();
      }),
    ];
  });
