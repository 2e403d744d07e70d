/** Open ends, loops, and signals that meet themselves. */
import { type Wire, wireId } from "../../design/design.ts";
import { removeParts } from "../../design/edits/remove.ts";
import { partsBeyond } from "../../design/lookup.ts";
import { isSameValue } from "../../design/options.ts";
import { candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { offers, type Site } from "../site.ts";

/** A load on each open output of a part. */
export const terminateOutputs: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.parts[0] ?? "");
  if (!record) return [];
  const id = record.part.id;
  const sockets = new Set(record.kind.delivery?.(record.options).sockets.map((s) => s.port));
  const open = record.ports.filter((p) => p.side === "out" && !record.joined[p.id] && !sockets.has(p.id));
  if (open.length === 0) return [];
  return [
    candidate("load", [id], { count: open.length }, (design) => {
      const d = draft(design);
      const [x = 0, y = 0] = d.part(id)?.at ?? [];
      for (const port of open) d.join([id, port.id], [d.put("load", {}, [x + 376, y]), "in"]);
      return d.result();
    }),
  ];
};

/** Without this wire a dish would be of no use to anybody: to take it off mends nothing. */
function isOnlyWay({ design, evaluation }: Site, wire: Wire): boolean {
  const above = partsBeyond(design.wires, [wire.from[0]], "upstream");
  const dishes = [wire.from[0], ...above].filter((id) => evaluation.record(id)?.kind.trade.job === "dish");
  const rest = design.wires.filter((w) => w !== wire);
  return dishes.some((id) =>
    [...partsBeyond(rest, [id], "downstream")].every((part) => !evaluation.record(part)?.kind.reception),
  );
}

/** Without this wire a place would lose all of a service that it has some of now. */
function isLastOfService({ design, report, evaluation }: Site, wire: Wire): boolean {
  const behind = new Set([wire.to[0], ...partsBeyond(design.wires, [wire.to[0]], "downstream")]);
  const rest = design.wires.filter((w) => w !== wire);
  return report.verdicts.some(({ part, services }) => {
    if (!behind.has(part)) return false;
    const above = [...partsBeyond(rest, [part], "upstream")].map((id) => evaluation.record(id));
    return services.some((s) => s.got > 0 && above.every((record) => !offers(record, s.service)));
  });
}

/** One wire of a loop, or one of two ways of the same signal, taken off. */
export const wireOff: Idea = (site, finding) => {
  const id = finding.parts[0] ?? "";
  const into = site.design.wires.filter(
    (w) => w.to[0] === id && !isOnlyWay(site, w) && !isLastOfService(site, w),
  );
  return into.map((wire) =>
    candidate("wire-off", [wireId(wire)], { from: wire.from, to: wire.to }, (design) => {
      const edit = removeParts(design, new Set(), new Set([wireId(wire)]));
      return edit.ok && !isSameValue(edit.design.wires, design.wires) ? edit.design : null;
    }),
  );
};
