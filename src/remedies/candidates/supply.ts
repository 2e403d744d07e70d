/** Supply that does not get where it is needed: parts that block it, units that are off, lines that are shorted. */
import type { Part } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { describedOptions, optionsMeaning } from "../../parts/meanings.ts";
import type { Meaning } from "../../parts/optionTrade.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { labelOf, type Site } from "../site.ts";
import { madeAnew } from "./cable.ts";

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

/** Parts below that get supply at an output and hand nothing on: there the way is broken. */
export const supplyPath: Idea = (site, finding) => {
  const id = finding.at.part;
  return below(site, id).flatMap((record): readonly Candidate[] => {
    const arrives = Object.values(record.feeds).some((feed) => feed.length > 0);
    const leaves = Object.values(record.offers).some((feed) => feed.some((o) => o.volts > 0));
    if (!arrives || leaves) return [];
    return unblocked(site, record);
  });
};

/** Ways to make a part pass supply. */
function unblocked(site: Site, record: PartRecord): readonly Candidate[] {
  const { id } = record.part;
  if (record.kind.trade.defect) return [madeAnew(site, id)];
  const options = openings(record);
  const name = labelOf(site, id);
  const found = options.map(([key, value]) =>
    candidate(
      "supply-path",
      [id, key, String(value)],
      {
        title: `Take a type that passes supply for ${name}`,
        reason: "It blocks the direct current that comes up from the receivers.",
      },
      (design) => {
        const d = draft(design);
        d.set(id, { [key]: value });
        return d.result();
      },
    ),
  );
  if (record.kind.inline && options.length === 0)
    found.push(
      candidate(
        "block-away",
        [id],
        {
          title: `Take ${name} out of the line`,
          reason: "It blocks the direct current that comes up from the receivers.",
        },
        (design) => {
          const d = draft(design);
          d.remove(id);
          return d.result();
        },
      ),
    );
  return found;
}

/** Option values with which a kind passes supply, most modest first. */
function openings({ kind, options }: PartRecord): readonly (readonly [string, unknown])[] {
  return [...describedOptions(kind)].flatMap(([key, { passes = [] }]) =>
    passes.filter((value) => options[key] !== value).map((value) => [key, value] as const),
  );
}

/** Units that could feed it, but are switched off, or told not to. */
export const supplyOn: Idea = (site, finding) => {
  const id = finding.at.part;
  const self = site.evaluation.record(id);
  return [...(self ? [self] : []), ...below(site, id)].flatMap((record): readonly Candidate[] => {
    const off = (value: unknown) => value === false || value === "0";
    return SWITCHES.flatMap(([meaning, on, title]) =>
      optionsMeaning(record.kind, meaning)
        .filter((key) => off(record.options[key]))
        .map((key) => switchedOn(record.part.id, [key, on], title(labelOf(site, record.part.id)))),
    );
  });
};

const SWITCHES: readonly (readonly [Meaning, on: unknown, title: (name: string) => string])[] = [
  ["mains", true, (name) => `Switch the mains of ${name} on`],
  ["converter feed", true, (name) => `Let ${name} feed the converter`],
  ["aerial supply", "12", (name) => `Switch the aerial supply of ${name} to 12 V`],
];

function switchedOn(id: string, [key, value]: readonly [string, unknown], title: string): Candidate {
  return candidate(
    "supply-on",
    [id, key],
    { title, reason: "It can feed what is without supply now." },
    (design) => {
      const d = draft(design);
      d.set(id, { [key]: value });
      return d.result();
    },
  );
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
    candidate(
      "power-inserter",
      [id],
      {
        title: `Put a power inserter behind ${labelOf(site, id)}`,
        reason: "A mains unit in the line feeds it, whatever the receivers do.",
      },
      (design) => {
        const d = draft(design);
        // Indoors: behind the first cable, where there is one.
        let at: readonly [string, string] = [id, port];
        const next = d.other(at);
        if (next && isCable(d.part(next[0])) && d.other([next[0], "out"])) at = [next[0], "out"];
        d.insert("power-inserter", { volts: record.kind.trade.fedWithVolts, limitMa: 400 }, at);
        return d.result();
      },
    ),
  ];
};

function isCable(part: Part | undefined): boolean {
  return part !== undefined && kindOf(part.kind)?.trade.job === "cable";
}
