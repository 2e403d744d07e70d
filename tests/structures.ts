/**
 * Large designs of one regular shape each, which random wiring never finds: ways and settings of switches that
 * multiply from stage to stage, and whatever grows long or wide.
 */
import fc from "fast-check";
import type { Design, Part, Wire } from "../src/design/design.ts";
import { kindOf } from "../src/parts/catalogue.ts";

/** Draws part by part; ids count up. */
class Drawing {
  readonly parts: Part[] = [];
  readonly wires: Wire[] = [];

  part(kind: string, options: Record<string, unknown> = {}, id = `p${this.parts.length + 1}`): string {
    const known = kindOf(kind);
    if (!known) throw new Error(`no kind ${kind}`);
    const at = [(this.parts.length % 40) * 240, Math.floor(this.parts.length / 40) * 160] as const;
    this.parts.push({ id, kind, label: id, options: known.options.parse(options), at });
    return id;
  }

  /** The same under a name of its own. */
  named(label: string, kind: string, options: Record<string, unknown> = {}): string {
    const id = this.part(kind, options);
    this.parts.push(...this.parts.splice(-1).map((part) => ({ ...part, label })));
    return id;
  }

  /** "part.port" to "part.port". */
  wire(from: string, to: string): void {
    const end = (text: string): readonly [string, string] => {
      const [id = "", port = ""] = text.split(".");
      return [id, port];
    };
    this.wires.push({ from: end(from), to: end(to) });
  }

  design(title: string): Design {
    return { title, parts: this.parts, wires: this.wires };
  }
}

/** A universal LNB on a dish; yields its output. */
function lnb(d: Drawing, degE = 20): string {
  const dish = d.part("dish", { orbitalPositionDegE: degE });
  const head = d.part("lnb-universal");
  d.wire(`${dish}.sky`, `${head}.sky`);
  return `${head}.out`;
}

/** Something of everything on one wire: television, radio and a switched satellite feed. */
function mixedFeed(d: Drawing): string {
  const tv = d.part("aerial-uhf");
  const both = d.part("diplexer-combine");
  d.wire(`${tv}.out`, `${both}.tv`);
  d.wire(lnb(d), `${both}.sat`);
  return `${both}.out`;
}

function receivers(d: Drawing, from: string): void {
  const split = d.part("diplexer-split");
  d.wire(from, `${split}.in`);
  d.wire(`${split}.tv`, `${d.part("receiver-tv")}.in`);
  d.wire(`${split}.sat`, `${d.part("receiver-sat")}.sat`);
}

/** Splitters whose outputs are all joined again, stage after stage: the number of ways is `ways` to the power of `stages`. */
export function ladder(o: { stages: number; ways: number; lossDb?: number }): Design {
  const { stages, ways, lossDb } = o;
  const own = lossDb === undefined ? {} : { loss: "own", ownTvDb: lossDb };
  const d = new Drawing();
  let from = mixedFeed(d);
  for (let s = 0; s < stages; s++) {
    const split = d.part("splitter", { ways, ...own });
    const join = d.part("combiner", { ways, dc: "all", ...own });
    d.wire(from, `${split}.in`);
    for (let n = 1; n <= ways; n++) d.wire(`${split}.out${n}`, `${join}.in${n}`);
    from = `${join}.out`;
  }
  receivers(d, from);
  return d.design("Ladder");
}

/** The same with one aerial and one receiver, and parts that bear the names of what they are. */
export function aerialLadder(stages: number, ways = 2): Design {
  const d = new Drawing();
  let from = `${d.part("aerial-uhf", {}, "aerial")}.out`;
  for (let s = 1; s <= stages; s++) {
    const split = d.part("splitter", { ways }, `split${s}`);
    const join = d.part("combiner", { ways }, `join${s}`);
    d.wire(from, `${split}.in`);
    for (let n = 1; n <= ways; n++) d.wire(`${split}.out${n}`, `${join}.in${n}`);
    from = `${join}.out`;
  }
  d.wire(from, `${d.part("receiver-tv", {}, "tv")}.in`);
  return d.design(`Ladder of ${stages} stages`);
}

/** As a ladder of two, with another length of cable, and an amplifier, in each of the branches. */
export function diamonds({ stages }: { stages: number }): Design {
  const d = new Drawing();
  let from = mixedFeed(d);
  for (let s = 0; s < stages; s++) {
    const split = d.part("splitter");
    const join = d.part("combiner");
    const amplifier = d.part("amp-distribution", { inputs: "one" });
    d.wire(from, `${split}.in`);
    for (const [n, lengthM] of [5, 12].entries()) {
      const cable = d.part("cable", { lengthM });
      d.wire(`${split}.out${n + 1}`, `${cable}.in`);
      if (n === 0) d.wire(`${cable}.out`, `${join}.in1`);
      else {
        d.wire(`${cable}.out`, `${amplifier}.in`);
        d.wire(`${amplifier}.out`, `${join}.in2`);
      }
    }
    from = `${join}.out`;
  }
  receivers(d, from);
  return d.design("Diamonds");
}

/** Position switches in a row, both inputs from the one before: settings multiply although there is one LNB. */
export function switchLattice({ stages }: { stages: number }): Design {
  const d = new Drawing();
  // Fed by itself: behind so many diodes nothing would be left of the receiver's supply.
  const inserter = d.part("power-inserter", { volts: 18, limitMa: 1000 });
  d.wire(lnb(d), `${inserter}.in`);
  let from = `${inserter}.out`;
  for (let s = 0; s < stages; s++) {
    const split = d.part("splitter", { dc: "all" });
    // Fed without any loss, so that the furthest LNB still works.
    const choose = d.part("position-switch", { inputs: "2", ohms: 0, ownMa: 0 });
    d.wire(from, `${split}.in`);
    d.wire(`${split}.out1`, `${choose}.in1`);
    d.wire(`${split}.out2`, `${choose}.in2`);
    from = `${choose}.out`;
  }
  d.wire(from, `${d.part("receiver-sat", { position: "1" })}.sat`);
  return d.design("Lattice of switches");
}

/** Position switches of four in a row, each with three LNBs of its own beside what comes from the one before. */
export function switchCascade({ stages }: { stages: number }): Design {
  const d = new Drawing();
  let from = lnb(d, 1);
  for (let s = 0; s < stages; s++) {
    const choose = d.part("position-switch", { inputs: "4", ohms: 0, ownMa: 0 });
    d.wire(from, `${choose}.in1`);
    for (let n = 2; n <= 4; n++) d.wire(lnb(d, (s * 3 + n) % 180), `${choose}.in${n}`);
    from = `${choose}.out`;
  }
  d.wire(from, `${d.part("receiver-sat", { position: "1" })}.sat`);
  return d.design("Cascade of position switches");
}

/** Multiswitches whose four inputs come from four outputs of the one before. */
export function multiswitchTower({ stages }: { stages: number }): Design {
  const d = new Drawing();
  const dish = d.part("dish");
  const head = d.part("lnb-quattro");
  d.wire(`${dish}.sky`, `${head}.sky`);
  const inputs = ["vl", "vh", "hl", "hh"];
  let from = inputs.map((port) => `${head}.${port}`);
  for (let s = 0; s < stages; s++) {
    const many = d.part("multiswitch", { outputs: 4, terrestrial: false });
    for (const [n, port] of inputs.entries()) d.wire(from[n] ?? "", `${many}.${port}`);
    from = [1, 2, 3, 4].map((n) => `${many}.out${n}`);
  }
  for (const output of from) d.wire(output, `${d.part("receiver-sat")}.sat`);
  return d.design("Tower of multiswitches");
}

/** Multiswitches in cascade on trunks, as in a real block, with a receiver in each flat. */
export function multiswitchRiser({ stages }: { stages: number }): Design {
  const d = new Drawing();
  const dish = d.part("dish");
  const head = d.part("lnb-quattro");
  d.wire(`${dish}.sky`, `${head}.sky`);
  const inputs = ["vl", "vh", "hl", "hh"];
  let from = inputs.map((port) => `${head}.${port}`);
  for (let s = 0; s < stages; s++) {
    const many = d.part("multiswitch", { outputs: 4, terrestrial: false, cascade: true });
    for (const [n, port] of inputs.entries()) d.wire(from[n] ?? "", `${many}.${port}`);
    from = inputs.map((port) => `${many}.${port}-thru`);
    for (let n = 1; n <= 4; n++) {
      const plate = d.part("outlet-sat", { dwelling: `flat ${s}-${n}` });
      d.wire(`${many}.out${n}`, `${plate}.in`);
      d.wire(`${plate}.sat`, `${d.part("receiver-sat")}.sat`);
    }
  }
  return d.design("Riser of multiswitches");
}

/**
 * A block of flats, each with a plate and two receivers on its own cable, on multiswitches with a trunk from one to the
 * next. `longDrops`: flats at the end of 240 m of cable, which is more than a receiver can do with.
 */
export function blockOfFlats(o: {
  switches: number;
  flatsEach: number;
  longDrops?: readonly number[];
}): Design {
  const d = new Drawing();
  const dish = d.named("Dish", "dish", { diameterM: 1 });
  const head = d.named("Quattro LNB", "lnb-quattro");
  d.wire(`${dish}.sky`, `${head}.sky`);
  const amplifier = d.named("Riser amplifier", "amp-distribution", { inputs: "one", gainDb: 24 });
  d.wire(`${d.named("UHF aerial", "aerial-uhf", { levelDbuv: 60 })}.out`, `${amplifier}.in`);
  const inputs = ["vl", "vh", "hl", "hh", "ter"];
  let from = [...inputs.slice(0, 4).map((port) => `${head}.${port}`), `${amplifier}.out`];
  for (let s = 0; s < o.switches; s++) {
    const first = s * o.flatsEach + 1;
    const many = d.named(`Multiswitch ${first}–${first + o.flatsEach - 1}`, "multiswitch", {
      outputs: o.flatsEach,
      cascade: true,
    });
    for (const [n, port] of inputs.entries()) d.wire(from[n] ?? "", `${many}.${port}`);
    from = inputs.map((port) => `${many}.${port}-thru`);
    for (let n = 1; n <= o.flatsEach; n++) {
      const flat = first + n - 1;
      const lengthM = o.longDrops?.includes(flat) ? 240 : 12 + 4 * (flat % 7);
      const drop = d.named(`Drop flat ${flat}`, "cable", { lengthM });
      const plate = d.named(`Plate flat ${flat}`, "outlet-triplexed", { dwelling: `Flat ${flat}` });
      const polarisation = flat % 2 ? "V" : "H";
      d.wire(`${many}.out${n}`, `${drop}.in`);
      d.wire(`${drop}.out`, `${plate}.in`);
      d.wire(`${plate}.tv`, `${d.named(`TV flat ${flat}`, "receiver-tv")}.in`);
      d.wire(
        `${plate}.sat`,
        `${d.named(`Satellite receiver flat ${flat}`, "receiver-sat", { polarisation })}.sat`,
      );
    }
  }
  return d.design(`Block of ${o.switches * o.flatsEach} flats`);
}

/** Aerials brought together by a tree of combiners, parted again by a tree of splitters. */
export function star({ sources, ways = 4 }: { sources: number; ways?: number }): Design {
  const d = new Drawing();
  let open = Array.from({ length: sources }, (_, n) => {
    const channels = [{ channel: 21 + (n % 28) }, { channel: 21 + ((n + 9) % 28) }];
    return `${d.part("aerial-uhf", { levelDbuv: 60 + (n % 7), channels })}.out`;
  });
  while (open.length > 1) {
    const next: string[] = [];
    for (let at = 0; at < open.length; at += ways) {
      const some = open.slice(at, at + ways);
      const join = d.part("combiner", { ways });
      for (const [n, from] of some.entries()) d.wire(from, `${join}.in${n + 1}`);
      next.push(`${join}.out`);
    }
    open = next;
  }
  let ends = open;
  while (ends.length * ways <= sources) {
    ends = ends.flatMap((from) => {
      const split = d.part("splitter", { ways });
      d.wire(from, `${split}.in`);
      return Array.from({ length: ways }, (_, n) => `${split}.out${n + 1}`);
    });
  }
  for (const [n, from] of ends.entries()) {
    const plate = d.part("outlet-tv", { dwelling: `flat ${n}` });
    d.wire(from, `${plate}.in`);
    d.wire(`${plate}.tv`, `${d.part("receiver-tv")}.in`);
  }
  return d.design("Star");
}

/** One aerial more at every stage of a row of combiners, and LNBs that want to be fed. */
export function chainOfSources({ stages }: { stages: number }): Design {
  const d = new Drawing();
  let from = mixedFeed(d);
  for (let s = 0; s < stages; s++) {
    const join = d.part("combiner", { dc: "all" });
    d.wire(from, `${join}.in1`);
    d.wire(
      s % 2 === 0
        ? `${d.part("aerial-uhf", { channels: [{ channel: 21 + (s % 28) }] })}.out`
        : lnb(d, s % 180),
      `${join}.in2`,
    );
    from = `${join}.out`;
  }
  receivers(d, from);
  return d.design("Chain of sources");
}

/** A riser of taps that let supply through, with a satellite receiver at each. */
export function chainOfReceivers({ stages }: { stages: number }): Design {
  const d = new Drawing();
  let from = mixedFeed(d);
  for (let s = 0; s < stages; s++) {
    const split = d.part("splitter", { dc: "all" });
    d.wire(from, `${split}.in`);
    const plate = d.part("outlet-sat", { dwelling: `flat ${s}` });
    d.wire(`${split}.out2`, `${plate}.in`);
    d.wire(`${plate}.sat`, `${d.part("receiver-sat", { polarisation: s % 2 ? "H" : "V" })}.sat`);
    from = `${split}.out1`;
  }
  receivers(d, from);
  return d.design("Chain of receivers");
}

/** A riser of through outlets, every one a flat of its own. */
export function chainOfOutlets({ stages }: { stages: number }): Design {
  const d = new Drawing();
  const tv = d.part("aerial-uhf");
  let from = `${tv}.out`;
  for (let s = 0; s < stages; s++) {
    const plate = d.part("outlet-through", { dwelling: `flat ${s}` });
    d.wire(from, `${plate}.in`);
    d.wire(`${plate}.tv`, `${d.part("receiver-tv")}.in`);
    from = `${plate}.out`;
  }
  return d.design("Chain of outlets");
}

/** Cables, filters and amplifiers one behind the other. */
export function chainOfStages({ stages, kind }: { stages: number; kind: string }): Design {
  const d = new Drawing();
  let from = mixedFeed(d);
  for (let s = 0; s < stages; s++) {
    const part = d.part(kind);
    d.wire(from, `${part}.in`);
    from = `${part}.out`;
  }
  receivers(d, from);
  return d.design("Chain of stages");
}

/** Every shape at a size [parts, about], by name. */
export const STRUCTURES: Readonly<Record<string, (parts: number) => Design>> = {
  "ladder of two": (parts) => ladder({ stages: Math.ceil(parts / 2), ways: 2 }),
  "ladder of eight": (parts) => ladder({ stages: Math.ceil(parts / 2), ways: 8 }),
  diamonds: (parts) => diamonds({ stages: Math.ceil(parts / 5) }),
  "lattice of switches": (parts) => switchLattice({ stages: Math.ceil(parts / 2) }),
  "cascade of position switches": (parts) => switchCascade({ stages: Math.ceil(parts / 7) }),
  "tower of multiswitches": (parts) => multiswitchTower({ stages: parts }),
  "riser of multiswitches": (parts) => multiswitchRiser({ stages: Math.ceil(parts / 9) }),
  star: (parts) => star({ sources: Math.ceil(parts / 4) }),
  "chain of sources": (parts) => chainOfSources({ stages: Math.ceil(parts / 2.5) }),
  "chain of receivers": (parts) => chainOfReceivers({ stages: Math.ceil(parts / 3) }),
  "chain of outlets": (parts) => chainOfOutlets({ stages: Math.ceil(parts / 2) }),
  "chain of cables": (parts) => chainOfStages({ stages: parts, kind: "cable" }),
  "chain of amplifiers": (parts) => chainOfStages({ stages: parts, kind: "amp-if" }),
  "chain of filters": (parts) => chainOfStages({ stages: parts, kind: "filter" }),
};

/** One stage of a row: what it does with what comes in, and what goes out. */
const STAGES: readonly ((d: Drawing, from: string, n: number) => string)[] = [
  // Parted and joined again, directly or by cables of different lengths.
  (d, from, n) => {
    const ways = 2 + (n % 3);
    const split = d.part("splitter", { ways });
    const join = d.part("combiner", { ways, dc: "all" });
    d.wire(from, `${split}.in`);
    for (let w = 1; w <= ways; w++) {
      if (n % 2 === 0) d.wire(`${split}.out${w}`, `${join}.in${w}`);
      else {
        const cable = d.part("cable", { lengthM: 3 * w });
        d.wire(`${split}.out${w}`, `${cable}.in`);
        d.wire(`${cable}.out`, `${join}.in${w}`);
      }
    }
    return `${join}.out`;
  },
  // Parted and chosen from.
  (d, from) => {
    const split = d.part("splitter", { dc: "all" });
    const choose = d.part("position-switch", { inputs: "2", ohms: 0, ownMa: 0 });
    d.wire(from, `${split}.in`);
    d.wire(`${split}.out1`, `${choose}.in1`);
    d.wire(`${split}.out2`, `${choose}.in2`);
    return `${choose}.out`;
  },
  // Parted, with another source joined to one half.
  (d, from, n) => {
    const split = d.part("splitter", { dc: "all" });
    const [add, join] = [d.part("combiner"), d.part("combiner", { dc: "all" })];
    d.wire(from, `${split}.in`);
    d.wire(`${split}.out1`, `${add}.in1`);
    d.wire(n % 2 ? lnb(d, n % 180) : `${d.part("aerial-uhf")}.out`, `${add}.in2`);
    d.wire(`${add}.out`, `${join}.in1`);
    d.wire(`${split}.out2`, `${join}.in2`);
    return `${join}.out`;
  },
  (d, from) => inRow(d, from, "amp-distribution"),
  (d, from) => inRow(d, from, "amp-if"),
  (d, from) => inRow(d, from, "filter-mobile"),
  (d, from) => inRow(d, from, "power-inserter"),
  (d, from) => inRow(d, from, "outlet-through"),
];

function inRow(d: Drawing, from: string, kind: string): string {
  const part = d.part(kind);
  d.wire(from, `${part}.in`);
  return `${part}.out`;
}

/** Any row of such stages behind something of everything, with receivers at its end. */
export function anyStructure(maxStages: number): fc.Arbitrary<Design> {
  const stage = fc.tuple(fc.nat({ max: STAGES.length - 1 }), fc.nat({ max: 1000 }));
  return fc.array(stage, { minLength: 1, maxLength: maxStages }).map((stages) => {
    const d = new Drawing();
    let from = mixedFeed(d);
    for (const [which, n] of stages) from = STAGES[which]?.(d, from, n) ?? from;
    receivers(d, from);
    return d.design("Row of stages");
  });
}
