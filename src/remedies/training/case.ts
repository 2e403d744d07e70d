/** A case to practise on: a sound design and a hidden fault in it. */
import { checkFile } from "../../design/check.ts";
import type { Design, PartId } from "../../design/design.ts";
import { exampleOf } from "../../design/examples.ts";
import type { Service, Television } from "../../signal/carrier.ts";
import type { Fault } from "../faults/fault.ts";
import { faultOf } from "../faults/list.ts";
import type { Symptom } from "../faults/symptoms.ts";
import barnLine from "./designs/barn-line.json" with { type: "json" };
import longCopperDrop from "./designs/long-copper-drop.json" with { type: "json" };
import mastBesideHouse from "./designs/mast-beside-house.json" with { type: "json" };
import mastheadHouse from "./designs/masthead-house.json" with { type: "json" };
import motorDish from "./designs/motor-dish.json" with { type: "json" };
import riserBlock from "./designs/riser-block.json" with { type: "json" };
import setFedAerial from "./designs/set-fed-aerial.json" with { type: "json" };
import singleCableHouse from "./designs/single-cable-house.json" with { type: "json" };
import twoSatellites from "./designs/two-satellites.json" with { type: "json" };
import yardCBand from "./designs/yard-c-band.json" with { type: "json" };

/** 1: one look and one measurement. 5: several parts could do the same. */
export type Level = 1 | 2 | 3 | 4 | 5;

export type TrainingCase = {
  /** Name in the address: small letters and hyphens; "random-<seed>" of a random case. */
  readonly id: string;
  readonly level: Level;
  /** Key of an example, or of a design made for training; empty for a random case. */
  readonly design: string;
  /** Id of the fault (`faults(design)`). */
  readonly fault: string;
  /** The walk that shows it: from the roof to this receiver or socket. */
  readonly walk: { readonly part: PartId; readonly service: Service };
};

/** What is told of a case that was drawn at random. */
export type RandomStory = {
  readonly seed: number;
  /** What receivers lose. */
  readonly noticed: readonly Symptom[];
  /** Receivers in all. */
  readonly receivers: number;
  /** How television comes in this design, where not from the air alone. */
  readonly television?: Television;
};

/** A case ready to be worked on. */
export type OpenedCase = {
  readonly case: TrainingCase;
  /** As planned: this is what the trainee sees. */
  readonly design: Design;
  readonly fault: Fault;
  /** As it is: this is what is measured. */
  readonly faulty: Design;
  /** Of a random case only: a guided one is told by its id. */
  readonly random?: RandomStory;
};

/** Plan values fade: beside the reading at first, then on request at a price, then not at all. */
export function planValueRule(level: Level): "shown" | "at a price" | "none" {
  if (level <= 2) return "shown";
  return level === 3 ? "at a price" : "none";
}

/** Hints of every case: a nudge, where to look, and nearly the answer. */
export const HINTS = 3;

const DESIGNS: Readonly<Record<string, unknown>> = {
  "barn-line": barnLine,
  "long-copper-drop": longCopperDrop,
  "mast-beside-house": mastBesideHouse,
  "masthead-house": mastheadHouse,
  "motor-dish": motorDish,
  "riser-block": riserBlock,
  "set-fed-aerial": setFedAerial,
  "single-cable-house": singleCableHouse,
  "two-satellites": twoSatellites,
  "yard-c-band": yardCBand,
};

/** The design that a case is about: an example, or one made for training. */
export function designOf(key: string): Design {
  const example = exampleOf(key);
  if (example) return example.load();
  const reading = checkFile(DESIGNS[key]);
  // The designs are part of the program: a faulty one is a fault of the program.
  if (!reading.ok) throw new Error(`Training design ${key}: ${reading.problem}`);
  return reading.design;
}

/** Puts the fault into the design. */
export function openCase(chosen: TrainingCase): OpenedCase {
  const design = designOf(chosen.design);
  const fault = faultOf(design, chosen.fault);
  if (!fault) throw new Error(`Training case ${chosen.id}: no fault ${chosen.fault}`);
  return { case: chosen, design, fault, faulty: fault.apply(design) };
}
