import type { Meeting } from "../../evaluate/evaluation.ts";
import { type CollisionGrade, spareNeededDb } from "../../rf/protection.ts";
import type { Facts } from "../../sentences/explain/explanation.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../../sentences/explain/picture.ts";
import { plainNames } from "../../sentences/explain/plainWords.ts";
import { bandName, list, partName, round1 } from "../../sentences/phrases.ts";
import { cnDb, cniDb } from "../../signal/readout.ts";
import { idOf, pairs, tally, worstCarrier, worstHit } from "../collisions.ts";
import type { Severity } from "../finding.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** Two signals on the same frequencies of one wire. */
export const sharedFrequencies: SpokenRule = {
  id: "shared-frequencies",
  title: "Two signals share frequencies on one wire",
  explain:
    "A wire carries each frequency once. Where two signals overlap, each is noise to the other: " +
    "a carrier survives only if it is stronger than the other by the C/N that its modulation needs, with something to spare.",
  source: "Noise-like interference adds to noise (C/(N+I)); grades by the spare C/N that it costs",
  check: ({ record }) =>
    pairs(record.meetings).flatMap((pair) => {
      const worst = worstHit(pair);
      if (!worst || worst.grade === "negligible") return [];
      const from = Math.round(Math.min(...pair.map((m) => m.fromMHz)));
      const to = Math.round(Math.max(...pair.map((m) => m.toMHz)));
      const first = pair[0];
      if (!first) return [];
      return [
        {
          severity: SEVERITY[worst.grade],
          parts: [record.part.id, first.victim.origin.part, first.other.origin.part],
          wires: first.port.startsWith("#") ? [] : wireAt(record, first.port),
          message:
            `${bandName(first.victim)} and ${bandName(first.other)} share ${from} to ${to} MHz behind ` +
            `${partName(record.part.id)}: ${list(tally(pair))}.`,
          value: worst.ciDb,
          limit: worst.requiredDb,
          unit: "dB C/I",
          source: sharedFrequencies.source,
          port: first.port,
          service: first.victim.origin.service,
          cure: "Give one of them a cable of its own, or convert it to frequencies that are free (a channel-stacking converter).",
        },
      ];
    }),
  explanation: {
    severities: ["error", "warning", "note"],
    customer: (facts) => {
      const origins = plainNames(facts, facts.finding.parts.slice(1, 3));
      const means = {
        error: "and drown each other there",
        warning: "which leaves less in reserve for bad weather",
        note: "which will hardly be noticed",
      } as const;
      return `Two signals from ${origins} lie on the same spot of one cable, ${means[facts.finding.severity]}.`;
    },
    trade: (facts) => {
      const { finding } = facts;
      const ciDb = finding.value ?? 0;
      const requiredDb = finding.limit ?? 0;
      const spare = spareNeededDb({ ciDb, requiredDb });
      const cost = Number.isFinite(spare)
        ? `it must bring ${round1(spare)} dB more than that in C/N to survive`
        : "it fails even without any noise";
      return (
        `Behind ${partName(finding.parts[0] ?? "")} ${pairOf(facts).length > 0 ? bothNames(pairOf(facts)) : "two signals"} overlap. The carrier hit worst has a C/I of ` +
        `${round1(ciDb)} dB and needs ${round1(requiredDb)} dB: ${cost}. Interference of this kind counts as noise: ` +
        "C/(N+I) = −10·log10(10^(−C/N/10) + 10^(−C/I/10)), and the spare C/N needed is −10·log10(1 − 10^(−(C/I − required)/10))."
      );
    },
    measure: (facts) => {
      const hit = worstCarrier(pairOf(facts));
      const before = `Spectrum meter behind ${partName(facts.finding.parts[0] ?? "")}`;
      if (!hit) return `${before}: unplug one of the two signals, and the MER of the other must rise.`;
      const { band, i } = hit;
      return (
        `${before}, on ${bandName(band)} at ${round1(band.grid.centre[i] ?? 0)} MHz: MER about ${round1(Math.max(0, cniDb(band, i)))} dB or no lock. Unplug the other signal: ` +
        `it must rise to about ${round1(cnDb(band, i))} dB, and that proves it. What is left on the screen in this stretch is the other one.`
      );
    },
    neighbours: ["band-cut", "receiver-misses", "same-signal-twice", "low-carrier-to-noise"],
    picture: (facts) => {
      const pair = pairOf(facts);
      const out = facts.record?.ports.find((p) => p.side === "out" && facts.record?.joined[p.id])?.id;
      const port = facts.finding.at.port?.startsWith("#") ? out : facts.finding.at.port;
      const spot = port === undefined ? null : spotOf(facts, port);
      const struck = new Set(pair.flatMap((m) => m.carriers.map((i) => idOf(m.victim, i))));
      return spot
        ? pictureOf(
            facts,
            spot,
            markCarriers(spectrumAt(facts, spot), (band, i) => struck.has(idOf(band, i)), {
              kind: "clash",
              label: "both here",
            }),
          )
        : null;
    },
  },
};

/** The meetings that a finding of this rule was made of. */
function pairOf({ finding, record }: Facts): readonly Meeting[] {
  const [, victim, other] = finding.parts;
  return (
    pairs(record?.meetings ?? []).find((pair) => {
      const first = pair[0];
      return (
        first?.port === finding.at.port &&
        first?.victim.origin.service === finding.at.service &&
        first?.victim.origin.part === victim &&
        first?.other.origin.part === other
      );
    }) ?? []
  );
}

function bothNames(pair: readonly Meeting[]): string {
  const first = pair[0];
  return first ? `${bandName(first.victim)} and ${bandName(first.other)}` : "";
}

const SEVERITY: Readonly<Record<CollisionGrade, Severity>> = {
  dead: "error",
  "likely dead": "error",
  "costs margin": "warning",
  slight: "note",
  negligible: "note",
};
