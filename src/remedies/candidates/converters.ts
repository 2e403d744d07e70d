/** Another converter in the place of one that does not suit its receivers, with what must change beside it. */
import type { Part, PortRef } from "../../design/design.ts";
import { portsOf } from "../../design/lookup.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { RuleId } from "../../findings/facts.ts";
import { feedsTaken } from "../../findings/feedsTaken.ts";
import type { Finding } from "../../findings/finding.ts";
import { passesService } from "../../findings/passesService.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { UNIVERSAL_HIGH_LO_MHZ, UNIVERSAL_LOW_LO_MHZ } from "../../parts/quadrants.ts";
import type { FeedKind } from "../../parts/trade.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import type { Suited } from "../cureStep.ts";
import { type DesignDraft, draft } from "../draft.ts";
import { type SatelliteInput, type Site, satelliteInputs, wayUp } from "../site.ts";
import { linesFrom, stackReceivers, tunersOn, userBandsSent } from "./userBands.ts";

/** The LNBs that a finding is about: named in it, or feeding what is named in it. */
export function lnbsOf(site: Site, parts: readonly string[]): readonly PartRecord[] {
  const found = new Map<string, PartRecord>();
  const add = (record: PartRecord | undefined) => {
    if (record?.kind.trade.job === "converter") found.set(record.part.id, record);
  };
  for (const id of parts) {
    const record = site.evaluation.record(id);
    add(record);
    for (const port of record?.ports.filter((p) => p.role === "beam" && p.side === "out") ?? [])
      add(site.evaluation.record(record?.joined[port.id]?.[0] ?? ""));
  }
  for (const input of satelliteInputs(site)) {
    const { converter, between } = input.feeding;
    const isNamed = [input.receiver, ...between.map((s) => s.record)].some((r) => parts.includes(r.part.id));
    if (isNamed) add(converter);
  }
  return [...found.values()];
}

/** The feed that a part takes as a receiver. */
export function takes(part: Part | undefined): FeedKind | undefined {
  return part && kindOf(part.kind)?.trade.takes;
}

export const otherConverter: Idea = (site, finding) =>
  lnbsOf(site, finding.parts).flatMap((lnb) => [
    ...universal(site, lnb, finding),
    ...stacked(site, lnb),
    ...wideband(site, lnb),
  ]);

/** One switched output for each line; needs one receiver input on each. */
function universal(site: Site, lnb: PartRecord, finding: Finding): readonly Candidate[] {
  const lines = [...linesFrom(site, lnb.part.id).values()];
  // Lines that found no output at a converter of another kind come back with it.
  const loose = looseLines(site);
  const count = lines.length + loose.length;
  if (lines.length === 0 || count > 8 || lines.some((line) => line.length > 1)) return [];
  const outputs = ["1", "2", "4", "8"].find((n) => Number(n) >= count) ?? "8";
  const now = optionMeaning(lnb.kind, "outputs");
  if (lnb.kind.trade.gives === "switched" && now && !isWorthIt(lnb, { now, outputs, finding })) return [];
  const inputs = lines.flat();
  const usual = isOdd(lnb) ? usualOscillators() : {};
  return [
    candidate(
      "universal-converter",
      [lnb.part.id, outputs],
      { outputs: Number(outputs), ...receiversFor(inputs, "switched") },
      (design) => {
        const d = draft(design);
        // Thought of for the LNB that another step has put there.
        if (d.part(lnb.part.id)?.kind !== lnb.kind.kind) return null;
        d.swap(lnb.part.id, "lnb-universal", { outputs, ...usual });
        for (const line of loose) d.join([lnb.part.id, freePort(d, lnb.part.id)], line);
        for (const id of new Set(inputs.map((i) => i.receiver.part.id))) {
          if (takes(d.part(id)) === "switched") continue;
          const fed = inputs.filter((i) => i.receiver.part.id === id).length;
          d.swap(id, fed > 1 ? "receiver-sat-twin" : "receiver-sat");
        }
        return d.result();
      },
    ),
  ];
}

/** Another LNB of the same sort: with more outputs, with the usual oscillators, or with fewer to draw less. */
function isWorthIt(
  lnb: PartRecord,
  o: { readonly now: string; readonly outputs: string; readonly finding: Finding },
): boolean {
  const count = Number(lnb.options[o.now]);
  if (isOdd(lnb) || Number(o.outputs) > count) return true;
  return Number(o.outputs) < count && DRAWS_TOO_MUCH.includes(o.finding.rule);
}

/** What a smaller LNB, which draws less, is of use for. */
const DRAWS_TOO_MUCH: readonly RuleId[] = ["supply-overloaded", "motor-line"];

/** A universal LNB of an older sort, which puts its bands elsewhere. */
function isOdd({ kind, options }: PartRecord): boolean {
  if (kind.trade.gives !== "switched") return false;
  return Object.entries(usualOscillators()).some(([key, usual]) => key in options && options[key] !== usual);
}

function usualOscillators(): Readonly<Record<string, unknown>> {
  return { lowLoMHz: UNIVERSAL_LOW_LO_MHZ, highLoMHz: UNIVERSAL_HIGH_LO_MHZ };
}

/** Inputs that nothing leads to, and that a satellite line leads on from: of a run, or of a combiner before receivers. */
function looseLines(site: Site): readonly PortRef[] {
  return site.evaluation.records.flatMap((record): readonly PortRef[] => {
    const { part, kind, joined, ports, inputs } = record;
    if (!ports.some((p) => p.side === "out" && joined[p.id])) return [];
    const open = ports.filter((p) => p.side === "in" && p.medium === "coax" && !joined[p.id]);
    if (kind.trade.job === "cable") return open.map((p) => [part.id, p.id]);
    if (kind.trade.job !== "combiner" || open.length === 0) return [];
    const isServed = Object.values(inputs).some(({ bands }) =>
      bands.some((b) => b.origin.service === "satellite"),
    );
    if (isServed || feedsTaken(site.evaluation, part.id).length === 0) return [];
    return open.filter((p) => passesService(record, p.id, "satellite")).map((p) => [part.id, p.id]);
  });
}

/** An output of a part that nothing hangs on; none: an empty text, and the join is refused. */
function freePort(d: DesignDraft, id: string): string {
  const part = d.part(id);
  return (part && portsOf(part).find((p) => p.side === "out" && !d.other([id, p.id]))?.id) ?? "";
}

/** Receivers that must be exchanged, for they take another feed. */
function receiversFor(inputs: readonly SatelliteInput[], feed: FeedKind): Suited {
  const others = inputs.filter((i) => i.receiver.kind.trade.takes !== feed).map((i) => i.receiver.part.id);
  return { receivers: [...new Set(others)] };
}

/** A single-cable converter: any number of receivers on a line, each tuner with a user band. */
function stacked(site: Site, lnb: PartRecord): readonly Candidate[] {
  const byPort = linesFrom(site, lnb.part.id);
  if (byPort.size === 0 || byPort.size > 2 || lnb.kind.trade.gives === "stacked") return [];
  const inputs = [...byPort.values()].flat();
  return [
    candidate("stacked-converter", [lnb.part.id], receiversFor(inputs, "stacked"), (design) => {
      const d = draft(design);
      const lines = [...byPort.values()].map((line) => [...new Set(line.map((i) => i.receiver.part.id))]);
      const most = Math.max(...lines.map((line) => tunersOn(d, line)));
      const many = most > 4 ? { standard: "EN 50607", bandSet: "thirtyTwo" } : {};
      d.swap(lnb.part.id, "lnb-stacked", { outputs: byPort.size > 1 ? "2" : "1", ...many });
      return stackReceivers(d, lines, userBandsSent(d.part(lnb.part.id))) ? d.result() : null;
    }),
  ];
}

/** Two cables with a whole polarisation each: for one receiver that has both, or several that take such a feed. */
function wideband(site: Site, lnb: PartRecord): readonly Candidate[] {
  const lines = [...linesFrom(site, lnb.part.id).entries()];
  const [first, second] = lines;
  if (lnb.kind.trade.gives === "wideband" || !first || !second || lines.length > 2) return [];
  const inputs = lines.flatMap(([, line]) => line);
  const receivers = [...new Set(inputs.map((i) => i.receiver.part.id))];
  // Which cable bears which polarisation follows from the receivers' inputs.
  const polarisations = lines.map(([, line]) => commonInput(line));
  const isAlone = receivers.length === 1 && inputs.length === 2;
  const isAgreed = polarisations.every((port) => port !== undefined) && new Set(polarisations).size === 2;
  if (!isAlone && !isAgreed) return [];
  return [
    candidate("wideband-converter", [lnb.part.id], receiversFor(inputs, "wideband"), (design) => {
      const d = draft(design);
      const ends = lines.map(([port], i) => ({
        at: d.other([lnb.part.id, port]),
        polarisation: polarisations[i] ?? (i === 0 ? "v" : "h"),
      }));
      for (const [port] of lines) d.unjoin([lnb.part.id, port]);
      d.swap(lnb.part.id, "lnb-wideband");
      for (const id of receivers) if (takes(d.part(id)) !== "wideband") d.swap(id, "receiver-hybrid");
      for (const { at, polarisation } of ends) if (at) d.join([lnb.part.id, polarisation], at);
      return d.result();
    }),
  ];
}

/** The input by which all wideband receivers of a line take it; undefined where they differ, or others are on it. */
function commonInput(line: readonly SatelliteInput[]): string | undefined {
  const ports = new Set(line.map((i) => (i.receiver.kind.trade.takes === "wideband" ? i.port : undefined)));
  const [port] = ports;
  return ports.size === 1 ? port : undefined;
}

/** Where the trunk of a quadrant ("vl") begins: at an output of an LNB, or nowhere. */
type TrunkEnd =
  | { readonly quadrant: string; readonly lnb: PartRecord; readonly port: string }
  | { readonly quadrant: string; readonly open: PortRef };

/** A quattro LNB before a multiswitch that is fed by something else, at each position. */
export const quattroConverter: Idea = (site, finding) => {
  const unit = site.evaluation.record(finding.at.part);
  if (unit?.kind.trade.job !== "switch unit") return [];
  const positions = new Set(unit.ports.flatMap((p) => (p.plane?.half ? [p.plane.position] : [])));
  return [...positions].flatMap((position) => quattroAt(site, unit, position));
};

function quattroAt(site: Site, unit: PartRecord, position: number): readonly Candidate[] {
  const lines = unit.ports.flatMap(({ id: input, side, plane }): readonly TrunkEnd[] => {
    if (side !== "in" || !plane?.half || plane.position !== position) return [];
    const quadrant = `${plane.polarisation}${plane.half[0]}`.toLowerCase();
    const way = unit.joined[input] ? wayUp(site, [unit.part.id, input], "satellite") : [];
    const at = way.find((s) => s.record.kind.trade.job === "converter");
    if (at) return [{ quadrant, lnb: at.record, port: at.out }];
    const top = unit.joined[input] ? (way.at(-1)?.record ?? unit) : undefined;
    const open = top && looseLines(site).find(([id]) => id === top.part.id);
    return open ? [{ quadrant, open }] : [];
  });
  const found = lines.flatMap((l) => ("lnb" in l ? [l] : []));
  const open = lines.flatMap((l) => ("open" in l ? [l] : []));
  const [first] = found;
  if (!first || found.some((l) => l.lnb !== first.lnb) || first.lnb.kind.trade.gives === "planes") return [];
  const { id } = first.lnb.part;
  return [
    candidate("quattro-converter", [id], {}, (design) => {
      const d = draft(design);
      const ends = found.map((l) => ({ quadrant: l.quadrant, at: d.other([id, l.port]) }));
      for (const { port } of found) d.unjoin([id, port]);
      d.swap(id, "lnb-quattro");
      for (const { quadrant, at } of ends) if (at) d.join([id, quadrant], at);
      for (const line of open) d.join([id, line.quadrant], line.open);
      return d.result();
    }),
  ];
}

/** A wideband LNB before a unit that takes whole polarisations and is fed by something else. */
export const widebandForUnit: Idea = (site, finding) => {
  const unit = site.evaluation.record(finding.at.part);
  if (unit?.kind.trade.job !== "switch unit") return [];
  const inputs = unit.ports.filter(
    ({ side, plane }) => side === "in" && plane?.position === 1 && plane.half === undefined,
  );
  const lines = inputs.flatMap(({ id, plane }) => {
    const step = unit.joined[id]
      ? wayUp(site, [unit.part.id, id], "satellite").find((s) => s.record.kind.trade.job === "converter")
      : undefined;
    return step && plane ? [{ lnb: step.record, port: step.out, to: plane.polarisation.toLowerCase() }] : [];
  });
  const [first] = lines;
  if (!first || lines.some((l) => l.lnb !== first.lnb) || first.lnb.kind.trade.gives === "wideband")
    return [];
  const { id } = first.lnb.part;
  return [
    candidate("wideband-converter", [id], { receivers: [] }, (design) => {
      const d = draft(design);
      const ends = lines.map(({ port, to }) => ({ to, at: d.other([id, port]) }));
      for (const { port } of lines) d.unjoin([id, port]);
      d.swap(id, "lnb-wideband");
      for (const { to, at } of ends) if (at) d.join([id, to], at);
      return d.result();
    }),
  ];
};

/** Cables at a multiswitch, each led to the input that its quadrant belongs to. */
export const rightQuadrants: Idea = (site, finding) => {
  const unit = site.evaluation.record(finding.parts[0] ?? "");
  if (!unit) return [];
  const moves = unit.ports.flatMap((port) => {
    const band = unit.inputs[port.id]?.bands.find((b) => b.origin.service === "satellite");
    if (!port.plane?.half || !band?.half || band.conditions.length > 0) return [];
    const to = unit.ports.find(
      ({ side, plane }) =>
        side === "in" &&
        plane?.position === port.plane?.position &&
        plane?.polarisation === band.origin.polarisation &&
        plane?.half === band.half,
    );
    return !to || to.id === port.id ? [] : [{ from: port.id, to: to.id }];
  });
  if (moves.length < 2 || new Set(moves.map((m) => m.to)).size < moves.length) return [];
  const { id } = unit.part;
  return [
    candidate("right-quadrants", [id], { moves }, (design) => {
      const d = draft(design);
      const ends = moves.map(({ from, to }) => ({ to, at: d.other([id, from]) }));
      for (const { from } of moves) d.unjoin([id, from]);
      for (const { to, at } of ends) if (at) d.join(at, [id, to]);
      return d.result();
    }),
  ];
};
