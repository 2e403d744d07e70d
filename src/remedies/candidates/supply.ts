/** Supply that does not get where it is needed: parts that block it, units that are off, lines that are shorted. */
import type { Part } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning, optionsMeaning } from "../../parts/meanings.ts";
import type { Meaning } from "../../parts/optionTrade.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";

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
        .map((key) => switchedOn(record.part.id, key, on)),
    );
  });
};

const SWITCHES: readonly (readonly [Meaning, on: unknown])[] = [
  ["mains", true],
  ["converter feed", true],
  ["aerial supply", "12"],
];

function switchedOn(id: string, key: string, value: unknown): Candidate {
  return candidate("supply-on", [id, key], { option: key, value }, (design) => {
    const d = draft(design);
    d.set(id, { [key]: value });
    return d.result();
  });
}

/** A mains unit of its own in the line: before the first part that would stop its current. */
export const inserter: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.at.part);
  const [port] = record?.power.load?.ports ?? [];
  if (!record || port === undefined || !record.joined[port]) return [];
  const { id } = record.part;
  // An LNB takes its orders from the same line: a fixed voltage there would hold it in one quadrant.
  if (record.power.switches?.length) return [];
  return [
    candidate("power-inserter", [id], {}, (design) => {
      const d = draft(design);
      // Indoors: behind the first cable, where there is one.
      let at: readonly [string, string] = [id, port];
      const next = d.other(at);
      if (next && isCable(d.part(next[0])) && d.other([next[0], "out"])) at = [next[0], "out"];
      d.insert("power-inserter", { volts: record.kind.trade.fedWithVolts, limitMa: 400 }, at);
      return d.result();
    }),
  ];
};

function isCable(part: Part | undefined): boolean {
  return part !== undefined && kindOf(part.kind)?.trade.job === "cable";
}

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
