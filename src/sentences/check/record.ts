/** A design, evaluated and reported on, as one object for other programs: the form of `check --json`. */
import { type Wire, wireId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { bandFactsOf } from "../../findings/bandFacts.ts";
import type { Cause, Finding, Report, Verdict } from "../../findings/finding.ts";
import { serviceName } from "../../signal/carrier.ts";
import { levelRange } from "../../signal/readout.ts";
import { messageOf } from "../finding.ts";
import { plainLabelOf } from "../phrases.ts";
import { serviceNameIn } from "../serviceWords.ts";
import { tunerSentence, verdictSentence } from "../verdict.ts";

/** Names of its fields are kept: scripts read them. Levels in dBµV into 75 Ω, margins and C/N in dB. */
export function checkRecordOf(evaluation: Evaluation, report: Report) {
  const index = new Map(report.findings.map((finding, n) => [finding, n]));
  const role = (which: Verdict["role"]) =>
    report.verdicts.filter((v) => v.role === which).map((v) => verdictRecord(v, evaluation));
  return {
    causes: report.causes.map((cause) => causeRecord(cause, index, evaluation)),
    findings: report.findings.map((finding) => findingRecord(finding, evaluation)),
    receivers: role("receiver"),
    outlets: role("outlet"),
    wires: evaluation.design.wires.map((wire) => wireRecord(wire, evaluation)),
  };
}

function causeRecord(cause: Cause, index: ReadonlyMap<Finding, number>, evaluation: Evaluation) {
  const { id, root, severity, receivers, outlets } = cause;
  return {
    id,
    rule: root.rule,
    severity,
    parts: root.parts,
    wires: root.wires,
    ...known({ port: root.at.port }),
    message: messageOf(root, evaluation),
    findings: cause.findings.map((f) => index.get(f) ?? -1),
    receivers,
    outlets,
  };
}

function findingRecord(finding: Finding, evaluation: Evaluation) {
  const { id, rule, severity, parts, wires, at, value, limit, unit } = finding;
  return {
    id,
    rule,
    severity,
    parts,
    wires,
    at: at.part,
    ...known({
      port: at.port,
      service: at.service && serviceNameIn(evaluation, at.service),
      side: at.side,
      tuner: at.tuner,
    }),
    message: messageOf(finding, evaluation),
    ...known({ value: finite(value), limit: finite(limit), unit }),
  };
}

function verdictRecord(verdict: Verdict, evaluation: Evaluation) {
  const { part, state, marginDb, services, tuners } = verdict;
  return {
    id: part,
    label: plainLabelOf(evaluation, part),
    works: state !== "fails",
    state,
    ...known({ marginDb: finite(marginDb) }),
    message: verdictSentence(verdict, evaluation),
    tuners: tuners.map((tuner) => ({
      number: tuner.number,
      input: tuner.input,
      ...known({ userBand: tuner.userBand }),
      wanted: tuner.wanted,
      got: tuner.got,
      why: tunerSentence(tuner, evaluation) ?? null,
    })),
    services: services.map((s) => ({
      name: serviceName(s),
      carriersWanted: s.wanted,
      carriersGot: s.got,
      ...known({
        levelMin: finite(s.levelMin),
        levelMax: finite(s.levelMax),
        cnMin: finite(s.cnMin),
        marginDb: finite(s.marginDb),
        // Of FM the poorest station: "heard" (through hiss), "good" or "clean".
        sound: s.sound?.step,
      }),
    })),
  };
}

function wireRecord(wire: Wire, evaluation: Evaluation) {
  return {
    id: wireId(wire),
    from: wire.from,
    to: wire.to,
    bands: evaluation.spectrum(wire).bands.flatMap((band) => {
      const range = levelRange(band);
      if (!range) return [];
      return [
        {
          service: serviceName(bandFactsOf(band)),
          origin: band.origin.key,
          fromMHz: band.grid.fromMHz,
          toMHz: band.grid.toMHz,
          levelMin: range.minDbuv,
          levelMax: range.maxDbuv,
        },
      ];
    }),
    ...supplyOn(wire, evaluation),
  };
}

/** Volts at the upper end of a wire, where supply comes up it, and the current drawn there [V, mA]. */
function supplyOn({ from, to }: Wire, evaluation: Evaluation) {
  const feed = evaluation.record(from[0])?.feeds[from[1]] ?? [];
  const volts = feed.filter((o) => !o.dormant).reduce((most, o) => Math.max(most, o.volts), 0);
  if (volts <= 0) return {};
  return { volts, milliamps: evaluation.record(to[0])?.demands[to[1]]?.milliamps ?? 0 };
}

/** Infinite where nothing disturbs or nothing is left: no number for others to read. */
function finite(value: number | undefined): number | undefined {
  return value !== undefined && Number.isFinite(value) ? value : undefined;
}

function known<T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  // What is left has no undefined among its values.
  return Object.fromEntries(Object.entries(values).filter(([, v]) => v !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}
