/** Supply that does not get where it is needed: parts that block it, units that are off, lines that are shorted. */
import type { Design, PortRef } from "../../design/design.ts";
import { removeParts } from "../../design/edits/remove.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { describedOptions, optionMeaning, optionsMeaning, standardValues } from "../../parts/meanings.ts";
import type { Meaning } from "../../parts/optionTrade.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";
import { recordsAround } from "./around.ts";

/** Everything downstream of a part, nearest first: whoever could feed it. */
function below(site: Site, id: string): readonly PartRecord[] {
  const seen = new Set([id]);
  const found: PartRecord[] = [];
  for (const each of seen) {
    const record = site.evaluation.record(each);
    if (!record) continue;
    if (each !== id) found.push(record);
    for (const port of record.ports) {
      const end = port.side === "out" ? record.joined[port.id] : undefined;
      if (end) seen.add(end[0]);
    }
  }
  return found;
}

/** Units that could feed it, but are switched off, or told not to. */
export const supplyOn: Idea = (site, finding) => {
  const id = finding.at.part;
  const self = site.evaluation.record(id);
  return [...(self ? [self] : []), ...below(site, id)].flatMap((record): readonly Candidate[] => {
    const off = (value: unknown) => value === false || value === "0";
    return SWITCHES.flatMap(([meaning, on]) =>
      optionsMeaning(record.kind, meaning)
        .filter((key) => off(record.options[key]))
        .map((key) => switchedOn(record.part.id, key, on ?? leastVolts(record, key))),
    );
  });
};

/** The lowest of the voltages that a unit gives aerials. */
function leastVolts({ kind }: PartRecord, key: string): unknown {
  return describedOptions(kind)
    .get(key)
    ?.choices?.find(({ value }) => value !== "0")?.value;
}

const SWITCHES: readonly (readonly [Meaning, on: unknown])[] = [
  ["mains", true],
  ["converter feed", true],
  ["aerial supply", undefined],
];

function switchedOn(id: string, key: string, value: unknown): Candidate {
  return candidate("supply-on", [id, key], { option: key, value }, (design) => {
    const d = draft(design);
    d.set(id, { [key]: value });
    return d.result();
  });
}

/** A mains unit of its own in the line, or the one that is there already in the right place. */
export const inserter: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.at.part);
  const [port] = record?.power.load?.ports ?? [];
  if (!record || port === undefined || !record.joined[port]) return [];
  // Whatever is fed over its trunks is fed by the head end.
  if (record.ports.some((p) => p.id === port && p.side === "in")) return [];
  const { id } = record.part;
  // An LNB takes its orders from the same line: a fixed voltage there would hold it in one quadrant.
  if (record.power.switches?.length) return [];
  const units = recordsAround(site, finding).filter((r) => r.kind.trade.job === "supply" && r.kind.inline);
  // Whoever has a unit does not buy another one.
  if (units.length > 0) return units.map((unit) => movedTo(unit, [id, port]));
  return [
    candidate("power-inserter", [id], {}, (design) => {
      const d = draft(design);
      const volts = record.kind.trade.fedWithVolts;
      d.insert("power-inserter", { volts, limitMa: 400 }, indoors(design, [id, port]));
      return d.result();
    }),
  ];
};

/** A unit that stands behind something that blocks its current, or on the wrong side, led to where it feeds. */
function movedTo({ part }: PartRecord, from: PortRef): Candidate {
  const behind = (design: Design) => {
    const edit = removeParts(design, new Set([part.id]), new Set());
    return indoors(edit.ok ? edit.design : design, from);
  };
  return candidate("inserter-moved", [part.id, ...from], { behind: from[0] }, (design) => {
    const d = draft(design);
    d.move(part.id, behind(design));
    return d.result();
  });
}

/** Indoors: behind the first cable, where there is one. */
function indoors(design: Design, at: PortRef): PortRef {
  const next = design.wires.find(({ from }) => from[0] === at[0] && from[1] === at[1])?.to[0];
  const isCable = design.parts.some((p) => p.id === next && kindOf(p.kind)?.trade.job === "cable");
  const goesOn = design.wires.some(({ from }) => from[0] === next && from[1] === "out");
  return next !== undefined && isCable && goesOn ? [next, "out"] : at;
}

/** A unit or an amplifier that feeds with more volts, where it gives too few. */
export const higherSupply: Idea = (site, finding) => {
  if (finding.rule !== "no-supply" || !("lost" in finding.facts)) return [];
  const { lost } = finding.facts;
  const record = site.evaluation.record(lost.supply);
  if (!record) return [];
  const { id } = record.part;
  const set = (key: string, value: unknown, volts: number) =>
    candidate("higher-supply", [id, key, volts], { volts }, (design) => {
      const d = draft(design);
      d.set(id, { [key]: value });
      return d.result();
    });
  const least = lost.givenVolts - lost.spareVolts;
  const units = optionsMeaning(record.kind, "supply volts").flatMap((key) => {
    const volts = standardValues(record.kind, key).find((v) => v > least);
    return volts === undefined ? [] : [set(key, volts, volts)];
  });
  const inside = optionsMeaning(record.kind, "aerial supply")
    .filter((key) => record.options[key] === "12")
    .map((key) => set(key, "24", 24));
  return [...units, ...inside];
};

/** A unit that feeds a single-cable line with less, where it keeps the line so high that no message is noticed. */
export const lowerSupply: Idea = (site, finding) => {
  if (finding.rule !== "user-band-conflict" || finding.facts.kind !== "standing volts") return [];
  const { part } = finding.at;
  const record = site.evaluation.record(part);
  return (record ? optionsMeaning(record.kind, "supply volts") : []).flatMap((key) => {
    const volts = record && standardValues(record.kind, key).findLast((v) => v <= (finding.limit ?? 0));
    if (volts === undefined) return [];
    return [
      candidate("lower-supply", [part, key, volts], { volts }, (design) => {
        const d = draft(design);
        d.set(part, { [key]: volts });
        return d.result();
      }),
    ];
  });
};

/** A unit that lives on its receivers, in the sort that has a mains unit of its own and feeds the LNB. */
export const mainsUnit: Idea = (site, finding) =>
  finding.parts.flatMap((id): readonly Candidate[] => {
    const record = site.evaluation.record(id);
    const option = record && optionMeaning(record.kind, "unit supply");
    if (!record || option === undefined || record.options[option] !== "receivers") return [];
    return [
      candidate("mains-unit", [id], {}, (design) => {
        const d = draft(design);
        d.set(id, { [option]: "mains" });
        return d.result();
      }),
    ];
  });
