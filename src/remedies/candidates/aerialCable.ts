/** Terrestrial signals off a cable that they cannot share, onto one of their own. */
import type { PartId, PortRef } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { candidate, type Idea } from "../candidate.ts";
import { type DesignDraft, draft } from "../draft.ts";
import { lengthM, type Site, wayUp } from "../site.ts";

/** More sets than that are wired anew by nobody. */
const MOST_SETS = 4;

/** Something that takes a terrestrial signal: its input, and what it hangs on now. */
type SetInput = {
  readonly at: PortRef;
  readonly from: PortRef;
  readonly metres: number;
  readonly record: PartRecord;
};

/** The aerial's lead taken off the joiner, and led to its sets on cables and plates of their own. */
export const aerialCable: Idea = (site, finding) => {
  if (finding.rule !== "wideband-shared") return [];
  const joiner = site.evaluation.record(finding.facts.joiner);
  const aerial = joiner && inputWith(joiner, (service) => service !== "satellite");
  const feed = joiner && inputWith(joiner, (service) => service === "satellite");
  const after = joiner?.joined[finding.at.port ?? ""];
  if (!joiner || !aerial || !feed || !after) return [];
  const sets = setsBehind(site, joiner.part.id);
  if (sets.length === 0 || sets.length > MOST_SETS) return [];
  const facts = { joiner: joiner.part.id, receivers: sets.map((s) => s.at[0]) };
  return [
    candidate("aerial-cable", [aerial[0], joiner.part.id], facts, (design) => {
      const d = draft(design);
      d.remove(joiner.part.id);
      d.join(feed, after);
      for (const { at, from } of sets) {
        d.unjoin(at);
        plain(d, from[0]);
      }
      const start = startsFor(d, aerial, sets.length);
      sets.forEach((set, i) => {
        lead(d, set, start(i));
      });
      return d.result();
    }),
  ];
};

/** What is joined to the input that gets such a service. */
function inputWith(joiner: PartRecord, is: (service: string) => boolean): PortRef | undefined {
  const port = joiner.ports.find(
    (p) => p.side === "in" && joiner.inputs[p.id]?.bands.some((b) => !b.isFloor && is(b.origin.service)),
  );
  return port && joiner.joined[port.id];
}

/** Inputs for TV and radio on the ways down from a part. */
function setsBehind(site: Site, from: PartId): readonly SetInput[] {
  const seen = new Set([from]);
  const found: SetInput[] = [];
  for (const id of seen) {
    const record = site.evaluation.record(id);
    if (!record) continue;
    for (const { id: port, side } of record.ports) {
      const end = side === "out" ? record.joined[port] : undefined;
      if (end) seen.add(end[0]);
    }
    for (const { port, services } of record.kind.reception?.(record.options).inputs ?? []) {
      const before = record.joined[port];
      const [service] = services;
      if (!before || !seen.has(before[0]) || !service || service === "satellite") continue;
      const way = wayUp(site, [id, port], service);
      const metres = lengthM(
        way.slice(
          0,
          Math.max(
            0,
            way.findIndex((s) => s.record.part.id === from),
          ),
        ),
      );
      found.push({ at: [id, port], from: before, metres, record });
    }
  }
  return found;
}

/** What took the two apart is not needed any more: a plain plate, or nothing. */
function plain(d: DesignDraft, id: PartId): void {
  const part = d.part(id);
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return;
  const legs = kind.ports(part.options).flatMap((p) => {
    const other = p.side === "out" ? d.other([id, p.id]) : undefined;
    return other ? [other] : [];
  });
  const [only, ...more] = legs;
  if (!only || more.length > 0) return;
  if (kind.delivery) {
    if (kind.trade.job === "plate") d.swap(id, "outlet-sat");
    return;
  }
  const above = d.other([id, "in"]);
  d.remove(id);
  if (above && !d.other(only)) d.join(above, only);
}

/** The aerial's lead itself for one set, legs of a splitter for more. */
function startsFor(d: DesignDraft, aerial: PortRef, count: number): (i: number) => PortRef {
  if (count === 1) return () => aerial;
  const [x = 0, y = 0] = d.part(aerial[0])?.at ?? [];
  const split = d.put("splitter", { ways: count }, [x + 376, y]);
  d.join(aerial, [split, "in"]);
  return (i) => [split, `out${i + 1}`];
}

function lead(d: DesignDraft, { at, metres, record }: SetInput, from: PortRef): void {
  const [x, y] = record.part.at;
  const plate = d.put("outlet-tv", {}, [x - 376, y]);
  const cable = d.put("cable", { lengthM: Math.min(500, Math.max(1, metres)) }, [x - 752, y]);
  d.join(from, [cable, "in"]);
  d.join([cable, "out"], [plate, "in"]);
  d.join([plate, "tv"], at);
}
