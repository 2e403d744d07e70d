/** Lines that are simply joined: without what hangs there dead, or kept apart by a splitter. */
import { kindOf } from "../../parts/catalogue.ts";
import type { DeadEnd } from "../../parts/contract.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";

/** The dead cable off its joint, and where one line is left, the joint too: its two ends are joined directly. */
export const deadCableOff: Idea = (site, finding) => {
  const id = [finding.at.part, ...finding.parts].find((part) => deadEndsAt(site, part).length > 0) ?? "";
  const record = site.evaluation.record(id);
  const dead = deadEndsAt(site, id);
  const input = record?.ports.find((p) => p.side === "in")?.id;
  const from = input === undefined ? undefined : record?.joined[input];
  if (!record || !from) return [];
  const used = record.ports.flatMap(({ id: leg, side }) => {
    const to = side === "out" && !record.deadEnds[leg] ? record.joined[leg] : undefined;
    return to ? [to] : [];
  });
  const [only, ...more] = used;
  if (!only || more.length > 0) return [];
  const cables = dead.flatMap(({ parts }) => parts);
  return [
    candidate("dead-cable-off", [id], { cables }, (design) => {
      const d = draft(design);
      d.remove(...cables, id);
      d.join(from, only);
      return d.result();
    }),
  ];
};

function deadEndsAt({ evaluation }: Site, part: string): readonly DeadEnd[] {
  return Object.values(evaluation.record(part)?.deadEnds ?? {});
}

/** A splitter in the place of a joint, its unused legs terminated. */
export const splitterForJoint: Idea = (site, finding) => {
  const id = finding.at.part;
  const record = site.evaluation.record(id);
  const splitter = kindOf("splitter");
  const ways = splitter && optionMeaning(splitter, "ways");
  if (!record || !ways || record.kind.trade.job !== "splitter") return [];
  // Whatever has an isolation of its own is a splitter already.
  if (optionMeaning(record.kind, "decoupling") !== undefined) return [];
  const legs = record.ports.filter((p) => p.side === "out").length;
  return [
    candidate("splitter-for-joint", [id], {}, (design) => {
      const d = draft(design);
      d.swap(id, "splitter", { [ways]: legs });
      return d.result();
    }),
  ];
};
