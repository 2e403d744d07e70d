/** Trunks of a unit that bring its stacking stage too little or too much: one remedy for all of them at once. */
import type { PortRef } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding } from "../../findings/finding.ts";
import { NEW_RUN_GRADES } from "../../parts/cable.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { type DesignDraft, draft } from "../draft.ts";
import { isFed, lengthM, type Site, type Step, wayUp } from "../site.ts";
import { isPoorer, regraded } from "./cable.ts";
import { excessDb, padFor, SPARE_DB } from "./levels.ts";

/** A trunk from the LNB to a unit's input: its parts, nearest to the unit first, and what was found at that input. */
type Trunk = {
  readonly input: string;
  readonly way: readonly Step[];
  readonly lnb: Step;
  readonly finding: Finding | undefined;
};

type Side = NonNullable<Finding["at"]["side"]>;

/** Nobody moves a unit, or amplifies, for less cable than that [m]; a choice of this tool. */
const LONG_M = 15;

function trunksOf(site: Site, unit: PartRecord, side: Side): readonly Trunk[] {
  return unit.ports.flatMap(({ id: input, role }): readonly Trunk[] => {
    if (role !== "plane" || !unit.joined[input]) return [];
    const way = wayUp(site, [unit.part.id, input], "satellite");
    const index = way.findIndex(({ record }) => record.kind.trade.job === "converter");
    const lnb = way[index];
    const finding = site.report.findings.find(
      ({ rule, at }) =>
        rule === "stacking-input" && at.part === unit.part.id && at.port === input && at.side === side,
    );
    return lnb ? [{ input, way: way.slice(0, index), lnb, finding }] : [];
  });
}

/** The unit and its trunks, where the finding is about its stage and more than one trunk is concerned. */
function concerned(site: Site, { at, rule }: Finding, side = at.side) {
  const unit = site.evaluation.record(at.part);
  if (rule !== "stacking-input" || !side || at.side !== side || unit?.kind.trade.job !== "switch unit")
    return undefined;
  const trunks = trunksOf(site, unit, side);
  const found = trunks.flatMap((trunk) => (trunk.finding ? [{ ...trunk, finding: trunk.finding }] : []));
  return found.length > 1 ? { unit, trunks, found } : undefined;
}

/** An idea for one trunk, not tried where several have the same trouble: one after the other they cure nothing. */
export function forOneTrunk(idea: Idea): Idea {
  return (site, finding) => (concerned(site, finding) ? [] : idea(site, finding));
}

function cablesOf(way: readonly Step[]): readonly Step[] {
  return way.filter(({ record }) => record.kind.trade.job === "cable");
}

function longestCable(way: readonly Step[]): Step | undefined {
  return cablesOf(way).toSorted((a, b) => lengthM([b]) - lengthM([a]))[0];
}

/** Better cable for all trunks that bring too little. */
export const trunkGrade: Idea = (site, finding) => {
  const weak = concerned(site, finding, "too little")?.found ?? [];
  return NEW_RUN_GRADES.flatMap((grade) => {
    const ids = weak.flatMap(({ way }) => {
      const cable = longestCable(way)?.record;
      return cable && isPoorer(cable, grade) ? [cable.part.id] : [];
    });
    return ids.length > 1 ? [regraded(ids, grade)] : [];
  });
};

/** An amplifier before the cable of each trunk that brings too little, or one for all trunks with a mains unit. */
export const trunkAmplifiers: Idea = (site, finding) => {
  const bundle = concerned(site, finding, "too little");
  if (!bundle) return [];
  const { unit, found } = bundle;
  const starts = found.flatMap(({ way }): PortRef[] => {
    const cable = longestCable(way)?.record;
    return cable && lengthM(way) >= LONG_M ? [[cable.part.id, "in"]] : [];
  });
  if (starts.length < found.length) return [];
  const db = Math.max(8, Math.ceil(Math.max(...found.map((t) => -excessDb(t.finding)))) + SPARE_DB + 1);
  return [
    candidate("trunk-amplifiers", [unit.part.id, db], { db, count: starts.length }, (design) => {
      const d = draft(design);
      for (const start of starts) d.insert("amp-if", { gainDb: db, ...rangeAt(unit) }, start);
      return d.result();
    }),
    ...trunkAmplifier(bundle.trunks, unit, db),
  ];
};

/** A wideband feed starts at about 300 MHz, far below the usual satellite IF. */
function rangeAt({ inputs }: PartRecord) {
  const isWide = Object.values(inputs).some(({ bands }) =>
    bands.some((b) => b.origin.service === "satellite" && b.grid.fromMHz < 900),
  );
  return isWide ? { fromMHz: 290, toMHz: 2350 } : {};
}

/** The four trunks of one quattro LNB through an amplifier made for them. */
function trunkAmplifier(trunks: readonly Trunk[], unit: PartRecord, db: number): readonly Candidate[] {
  const [first] = trunks;
  const quadrants = trunks.filter((t) => ["vl", "vh", "hl", "hh"].includes(t.input));
  if (!first || quadrants.length !== 4 || quadrants.length < trunks.length) return [];
  const lnb = first.lnb.record.part;
  if (trunks.some((t) => t.lnb.record.part.id !== lnb.id)) return [];
  return [
    candidate("trunk-amplifier", [lnb.id, unit.part.id, db], { db }, (design) => {
      const d = draft(design);
      const [x, y] = lnb.at;
      const amp = d.put("amp-trunks", { gainDb: db, terrestrial: false }, [x + 376, y]);
      for (const { input, lnb: start } of trunks) {
        const next = d.other([lnb.id, start.out]);
        d.unjoin([lnb.id, start.out]);
        d.join([lnb.id, start.out], [amp, input]);
        if (next) d.join([amp, `${input}-out`], next);
      }
      return d.result();
    }),
  ];
}

/**
 * The unit moved to the LNB's end of its trunks: as many of the old cables as it has lines then carry user bands, and
 * the others lie idle. Its few leads up there lose next to nothing.
 */
export const unitUp: Idea = (site, finding) => {
  const bundle = concerned(site, finding, "too little");
  if (!bundle) return [];
  const { unit, trunks } = bundle;
  const runs = trunks.map(({ way }) => cablesOf(way));
  const lines = unit.ports.filter((p) => p.side === "out" && unit.joined[p.id]).map((p) => p.id);
  // What else brings a lead to the unit would have to come along.
  const others = unit.ports.filter((p) => p.side === "in" && p.role !== "plane" && unit.joined[p.id]);
  if (others.length > 0 || lines.length === 0 || lines.length > runs.length) return [];
  const isPlain = trunks.every(({ way }) => way.length === 1) && runs.every((run) => run.length === 1);
  if (!isPlain || runs.some((run) => lengthM(run) < LONG_M)) return [];
  const cables = runs.flatMap((run) => run.map(({ record }) => record.part.id));
  const { id } = unit.part;
  return [
    candidate("unit-up", [id], { lines: lines.length }, (design) => {
      const d = draft(design);
      for (const cable of cables) {
        d.unjoin([cable, "in"]);
        d.unjoin([cable, "out"]);
      }
      for (const { input, lnb } of trunks) d.join([lnb.record.part.id, lnb.out], [id, input]);
      for (const [i, line] of lines.entries()) ledThrough(d, [id, line], cables[i]);
      d.remove(...cables.slice(lines.length));
      return d.result();
    }),
  ];
};

function ledThrough(d: DesignDraft, line: PortRef, cable: string | undefined): void {
  const next = d.other(line);
  if (cable === undefined || !next) return;
  d.unjoin(line);
  d.join(line, [cable, "in"]);
  d.join([cable, "out"], next);
}

/** An attenuator before each input that gets too much, or an LNB of less gain. */
export const trunkPads: Idea = (site, finding) => {
  const bundle = concerned(site, finding, "too much");
  if (!bundle) return [];
  const { unit, found } = bundle;
  const over = Math.max(...found.map((t) => excessDb(t.finding)));
  const db = padFor(over + 1);
  const { id } = unit.part;
  const inputs = found.map((t) => t.input);
  const pads =
    db === undefined
      ? []
      : [
          candidate("trunk-pads", [id, db], { db, count: inputs.length }, (design) => {
            const d = draft(design);
            for (const input of inputs) {
              const from = unit.joined[input];
              const above = from && site.evaluation.record(from[0]);
              d.insert("attenuator", { lossDb: db, dcPass: !!above && isFed(above, from[1]) }, [id, input]);
            }
            return d.result();
          }),
        ];
  return [...pads, ...lesserLnb(found, over)];
};

/** Least conversion gain that LNBs are sold with [dB]; the range that the field of the gain names. */
const LEAST_LNB_GAIN_DB = 50;

function lesserLnb(found: readonly Trunk[], over: number): readonly Candidate[] {
  const lnbs = [...new Set(found.map((t) => t.lnb.record))];
  const [lnb] = lnbs;
  const key = lnb && optionMeaning(lnb.kind, "conversion gain");
  const now = lnb && key !== undefined ? lnb.options[key] : undefined;
  if (!lnb || lnbs.length > 1 || key === undefined || typeof now !== "number") return [];
  const db = Math.floor(now - over - 1);
  if (db < LEAST_LNB_GAIN_DB) return [];
  return [
    candidate("lesser-lnb", [lnb.part.id, db], { db }, (design) => {
      const d = draft(design);
      d.set(lnb.part.id, { [key]: db });
      return d.result();
    }),
  ];
}
