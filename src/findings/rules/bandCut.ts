import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Facts } from "../../sentences/explain/explanation.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../../sentences/explain/picture.ts";
import { capital, plainName, roughly } from "../../sentences/explain/plainWords.ts";
import { bandName, countedAs, list, namesOf, partName, round1, share } from "../../sentences/phrases.ts";
import type { Band } from "../../signal/band.ts";
import { WANTED_SERVICES } from "../../signal/carrier.ts";
import { isLive, usedUserBands } from "../../signal/readout.ts";
import { numeral, plural } from "../../words/plural.ts";
import type { Severity } from "../finding.ts";
import { type SpokenRule, spokenOf, wireAt } from "../rule.ts";

/** A part that lets a band through, but not the whole of it. */
export const bandCut: SpokenRule = {
  id: "band-cut",
  title: "Part of a band is cut off",
  explain:
    "Filters, separating plates and some splitters pass a range of frequencies that was right for the old system. " +
    "A band that reaches beyond the range loses the carriers outside it, while the rest works and hides the fault.",
  source: "Pass range of the part; a carrier is lost when less than 90 % of its power gets through",
  check: ({ record }) =>
    cutsHere(record).map(({ port, band, lost, of }) => ({
      severity: severityOf(record.part.id, band),
      parts: [record.part.id],
      wires: wireAt(record, port),
      message:
        `${partName(record.part.id)} passes only ${share(of - lost, of, countedAs(band))} of ` +
        `${bandName(band)}: ${plural(lost, { one: "one is outside its range", other: (n) => `${n} are outside its range` })}.`,
      value: lost,
      limit: 0,
      unit: namesOf(countedAs(band)),
      source: bandCut.source,
      port,
      service: band.origin.service,
      cure:
        band.origin.service === "satellite"
          ? "Use a part that passes the whole feed, or a feed that fits into the part's range."
          : "Use a part with a wider range, if these carriers are wanted.",
    })),
  explanation: {
    severities: ["error", "warning", "note"],
    customer: (facts) => {
      const cut = cutOf(facts);
      const rest = cut
        ? roughly(cut.of - cut.lost, cut.of, facts.finding.at.service)
        : "only a part of the channels";
      return `${capital(plainName(facts, facts.finding.parts[0]))} was made for another kind of signal and lets through ${rest}.`;
    },
    trade: (facts) => {
      const { finding } = facts;
      const cut = cutOf(facts);
      if (!cut)
        return `${partName(finding.parts[0] ?? "")} takes carriers away that are outside its pass range.`;
      const part = partName(finding.parts[0] ?? "");
      return (
        `Of ${numeral(cut.of)} ${namesOf(countedAs(cut.band))} of ${bandName(cut.band)}, ${plural(cut.lost, {
          one: (n) => `${n} is outside the pass range of ${part}`,
          other: (n) => `${n} are outside the pass range of ${part}`,
        })}: ` +
        `${list(stretches(cut.band, finding.parts[0] ?? ""))}. A carrier counts as lost when less than 90 % of its power gets through; a filter stops it by about 20 dB beside the edge ` +
        "and by its full rejection further off, so a rest may still be seen on a meter."
      );
    },
    measure: (facts) => {
      const { finding } = facts;
      const cut = cutOf(facts);
      const i = cut ? lostIn(cut.band, finding.parts[0] ?? "")[0] : undefined;
      const at =
        cut && i !== undefined ? `at ${round1(cut.band.grid.centre[i] ?? 0)} MHz` : "outside its range";
      const after =
        cut && i !== undefined
          ? `about ${round1(cut.band.level[i] ?? 0)} dBµV or less behind it`
          : "next to nothing behind it";
      return `Spectrum meter before and behind ${partName(finding.parts[0] ?? "")}, ${at}: full level before, ${after}, while carriers inside its range lose only a few decibels. That proves the part.`;
    },
    neighbours: ["receiver-misses", "wrong-feed", "shared-frequencies"],
    picture: (facts) => {
      const { finding } = facts;
      const spot = spotOf(facts);
      if (!spot) return null;
      const part = finding.parts[0] ?? "";
      const marks = markCarriers(
        spectrumAt(facts, spot),
        (band, i) => band.origin.service === finding.at.service && isCutBy(band, i, part),
        { kind: "lost", label: `stopped by ${partName(part)}` },
      );
      return pictureOf(facts, spot, marks);
    },
  },
};

/** What a finding of this rule counted. */
function cutOf({ finding, record }: Facts): CutHere | undefined {
  if (!record) return undefined;
  return cutsHere(record).find(
    (c) =>
      c.port === finding.at.port &&
      c.lost === finding.value &&
      // What stands before the label tells bands apart that lose as many.
      spokenOf(finding).includes(bandName(c.band).split("⟦")[0] ?? ""),
  );
}

function lostIn(band: Band, part: string): readonly number[] {
  return Array.from(band.cut.keys()).filter((i) => isCutBy(band, i, part));
}

/** "310 to 972 MHz", for each run of lost carriers. */
function stretches(band: Band, part: string): readonly string[] {
  const runs = markCarriers({ bands: [band] }, (b, i) => isCutBy(b, i, part), { kind: "lost", label: "" });
  return runs.map(({ fromMHz, toMHz }) => `${Math.round(fromMHz)} to ${Math.round(toMHz)} MHz`);
}

/** A user band that nobody uses may well be cut; a terrestrial filter may be meant so. */
function severityOf(part: string, band: Band): Severity {
  if (!band.stack) return band.origin.service === "satellite" ? "error" : "warning";
  const used = usedUserBands(band.stack);
  const hurts = band.stack.numbers.some((n, i) => used.has(n) && isCutBy(band, i, part));
  return hurts ? "error" : "note";
}

type CutHere = { port: string; band: Band; lost: number; of: number };

/** For every band, the output that passes most of it, if it passes some but not all. */
function cutsHere(record: PartRecord): CutHere[] {
  const sockets = record.kind.delivery?.(record.options).sockets;
  const best = new Map<string, CutHere>();
  for (const [port, spectrum] of Object.entries(record.outputs)) {
    const services = sockets?.find((s) => s.port === port)?.services;
    for (const band of spectrum.bands) {
      const { service, key } = band.origin;
      if (services ? !services.includes(service) : !WANTED_SERVICES.some((s) => s === service)) continue;
      const { live, lost } = countCut(band, record.part.id);
      const name = `${key}${band.half ?? ""}${services ? port : ""}`;
      const former = best.get(name);
      if (live > 0 && (!former || live > former.of - former.lost))
        best.set(name, { port, band, lost, of: live + lost });
    }
  }
  return [...best.values()].filter((c) => c.lost > 0);
}

function countCut(band: Band, part: string): { live: number; lost: number } {
  let live = 0;
  let lost = 0;
  for (let i = 0; i < band.cut.length; i++) {
    if (isLive(band, i)) live++;
    else if (isCutBy(band, i, part)) lost++;
  }
  return { live, lost };
}

function isCutBy(band: Band, i: number, part: string): boolean {
  const mark = band.cut[i] ?? 0;
  return mark > 0 && band.cuts[mark - 1]?.part === part;
}
