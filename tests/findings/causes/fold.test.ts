/**
 * Which finding follows from which: findings made by hand on a line known beforehand, with what each takes and lacks.
 * Common practice, no source.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { type Node, nodeOf, rootsOf } from "../../../src/findings/causes/fold.ts";
import type { Mechanism } from "../../../src/findings/causes/mechanisms.ts";
import { signalOrderOf } from "../../../src/findings/causes/signalOrder.ts";
import { waysOf } from "../../../src/findings/causes/ways.ts";
import type { Severity, Where } from "../../../src/findings/finding.ts";
import { draw } from "../../draw.ts";

/** a – k – s – (p1 – t1, p2 – t2), drawn from the end. */
const LINE = draw(
  {
    t1: ["receiver-tv"],
    t2: ["receiver-tv"],
    p1: ["attenuator"],
    p2: ["attenuator"],
    s: ["splitter", { dc: "all" }],
    k: ["cable"],
    a: ["aerial-uhf"],
  },
  "p1.out > t1.in, p2.out > t2.in, s.out1 > p1.in, s.out2 > p2.in, k.out > s.in, a.out > k.in",
);

type Sketched = Partial<Mechanism> & {
  readonly at: string | Where;
  /** The part that it names; the place itself if not told. */
  readonly names?: string;
  readonly mentions?: readonly string[];
  readonly severity?: Severity;
  readonly rule?: "loop" | "above-band-edge";
};

let made = 0;

function node(o: Sketched): Node {
  const at = typeof o.at === "string" ? { part: o.at } : o.at;
  const culprit = o.names ?? at.part;
  const common = {
    id: `finding ${made++}`,
    severity: o.severity ?? "error",
    at,
    parts: [culprit, ...(o.mentions ?? [])],
    wires: [],
  } as const;
  const { stage = 5, natures = [], takes = [], lacks = [] } = o;
  return {
    finding:
      o.rule === "loop"
        ? { ...common, rule: "loop", facts: {} }
        : { ...common, rule: "above-band-edge", facts: { channels: [], edgeMHz: 694, nowhere: [] } },
    mechanism: { stage, natures, takes, lacks },
    culprit,
  };
}

test("the culprit of a finding is the first part that it names", () => {
  const { finding } = node({ at: "t1", names: "k", mentions: ["s"] });
  expect(nodeOf(finding)).toMatchObject({ finding, culprit: "k" });
});

/** The roots of the last of these, whatever order they come in. */
function rootOf(nodes: readonly Node[], design: Design = LINE): Node | undefined {
  const last = nodes.at(-1);
  const evaluation = evaluate(design);
  const folding = { evaluation, order: signalOrderOf(evaluation), ways: waysOf(evaluation) };
  const found = [nodes, nodes.toReversed()].map((some) => last && rootsOf(some, folding).get(last));
  expect(found[0]).toBe(found[1]);
  return found[0];
}

/** Whether the second follows from the first. */
function follows(cause: Sketched, victim: Sketched, design?: Design): boolean {
  const [first, second] = [node({ stage: 1, ...cause }), node({ stage: 9, ...victim })];
  const root = rootOf([first, second], design);
  expect([first, second]).toContain(root);
  return root === first;
}

const weak = { takes: ["level"] } as const;
const short = { lacks: ["level"] } as const;

describe("a finding follows from the culprit that it names", () => {
  test("where that takes what it lacks", () => {
    expect(follows({ at: "k", ...weak }, { at: "t1", names: "k", ...short })).toBe(true);
    expect(follows({ at: "k", takes: ["quality"] }, { at: "t1", names: "k", ...short })).toBe(false);
  });

  test("also where the culprit is found elsewhere, or stands only as the place", () => {
    expect(follows({ at: "t2", names: "k", ...weak }, { at: "t1", names: "k", ...short })).toBe(true);
    expect(follows({ at: "k", names: "a", ...weak }, { at: "t1", names: "k", ...short })).toBe(true);
  });

  test("of the same service, where both concern one", () => {
    const of = (service: "tv" | "dab") =>
      follows(
        { at: { part: "k", service: "tv" }, ...weak },
        { at: { part: "t1", service }, names: "k", ...short },
      );
    expect([of("tv"), of("dab")]).toEqual([true, false]);
    expect(follows({ at: "k", ...weak }, { at: { part: "t1", service: "tv" }, names: "k", ...short })).toBe(
      true,
    );
    expect(follows({ at: { part: "k", service: "tv" }, ...weak }, { at: "t1", names: "k", ...short })).toBe(
      true,
    );
  });

  test("and from nothing that comes later in kind", () => {
    expect(follows({ at: "k", stage: 10, ...weak }, { at: "t1", names: "k", ...short })).toBe(false);
  });
});

describe("findings that name one culprit", () => {
  test("are one for a like reason", () => {
    const like = { natures: ["too weak"] } as const;
    expect(follows({ at: "k", ...like }, { at: "t1", names: "k", ...like })).toBe(true);
    expect(follows({ at: "k", ...like }, { at: "t1", names: "k", natures: ["wiring"] })).toBe(false);
  });

  test("are one by a reason of their own only under the same rule", () => {
    const own = { natures: ["own"] } as const;
    expect(follows({ at: "k", ...own }, { at: "t1", names: "k", ...own })).toBe(true);
    expect(follows({ at: "k", rule: "loop", ...own }, { at: "t1", names: "k", ...own })).toBe(false);
  });

  test("are one whatever the reason where the culprit is defect", () => {
    const bad = draw(
      { t1: ["receiver-tv"], k: ["bad-joint"], c: ["cable", { grade: "clad-1.0" }], a: ["aerial-uhf"] },
      "a.out > c.in, c.out > k.in, k.out > t1.in",
    );
    const [weakly, wired] = [{ natures: ["too weak"] }, { natures: ["wiring"] }] as const;
    expect(follows({ at: "k", ...weakly }, { at: "t1", names: "k", ...wired }, bad)).toBe(true);
    // A cable of steel is a defect by its own options.
    expect(follows({ at: "c", ...weakly }, { at: "t1", names: "c", ...wired }, bad)).toBe(true);
    expect(follows({ at: "a", ...weakly }, { at: "t1", names: "a", ...wired }, bad)).toBe(false);
  });
});

describe("a finding follows from what lies before it", () => {
  test("where that takes what it lacks", () => {
    expect(follows({ at: "s", ...weak }, { at: "t1", ...short })).toBe(true);
    expect(follows({ at: "a", ...weak }, { at: "t1", ...short })).toBe(true);
    expect(follows({ at: "s", takes: ["quality"] }, { at: "t1", ...short })).toBe(false);
  });

  test("not from what lies on another branch, or behind it", () => {
    expect(follows({ at: "p2", ...weak }, { at: "t1", ...short })).toBe(false);
    expect(follows({ at: "t1", ...weak }, { at: "k", ...short })).toBe(false);
  });

  test("at the same place too", () => {
    const nothing = { at: "t1", takes: ["signal"] } as const;
    expect(follows(nothing, { at: "t1", names: "s", lacks: ["signal"] })).toBe(true);
  });

  test("at an output only where the way leaves by it", () => {
    const at = (port: string) => ({ part: "s", port });
    expect(follows({ at: at("out1"), ...weak }, { at: "t1", ...short })).toBe(true);
    expect(follows({ at: at("out2"), ...weak }, { at: "t1", ...short })).toBe(false);
    expect(follows({ at: at("in"), ...weak }, { at: "t1", ...short })).toBe(true);
  });

  test("not from a mere note", () => {
    expect(follows({ at: "s", severity: "note", ...weak }, { at: "t1", ...short })).toBe(false);
    expect(follows({ at: "s", severity: "warning", ...weak }, { at: "t1", ...short })).toBe(true);
  });

  test("of a service that comes by there", () => {
    const of = (service: "tv" | "satellite") =>
      follows({ at: "s", ...weak }, { at: { part: "t1", service }, ...short });
    expect([of("tv"), of("satellite")]).toEqual([true, false]);
  });

  test("of the service that it speaks of, though that comes no further", () => {
    const of = (part: string) => ({ part, service: "satellite" }) as const;
    expect(follows({ at: of("s"), ...weak }, { at: of("t1"), ...short })).toBe(true);
  });

  test("of any service where nothing comes by at all", () => {
    const dead = draw({ t1: ["receiver-tv"], s: ["splitter"] }, "s.out1 > t1.in");
    const victim = { at: { part: "t1", service: "tv" }, ...short } as const;
    expect(follows({ at: "s", ...weak }, victim, dead)).toBe(true);
  });

  test("at its own place whatever the port", () => {
    const nothing = { at: { part: "s", port: "out2" }, takes: ["signal"] } as const;
    const victim = { at: { part: "s", port: "in" }, names: "p1", lacks: ["signal"] } as const;
    expect(follows(nothing, victim)).toBe(true);
  });

  // Who names a culprit of his own knows better than the place where he stands.
  test("not where it names another culprit, unless nothing comes through, or both speak of it", () => {
    const victim = { at: "t1", names: "p2" } as const;
    expect(follows({ at: "s", ...weak }, { ...victim, ...short })).toBe(false);
    expect(follows({ at: "s", takes: ["signal"] }, { ...victim, lacks: ["signal"] })).toBe(true);
    expect(follows({ at: "s", mentions: ["p2"], ...weak }, { ...victim, ...short })).toBe(true);
  });

  test("where it names receivers, only at those", () => {
    const clash = { at: "s", takes: ["command"] } as const;
    const victim = { at: "t1", lacks: ["command"] } as const;
    expect(follows({ ...clash, mentions: ["t1"] }, victim)).toBe(true);
    expect(follows({ ...clash, mentions: ["t2"] }, victim)).toBe(false);
    expect(follows({ ...clash, mentions: ["t2"] }, { ...victim, at: "p1" })).toBe(true);
    expect(follows(clash, victim)).toBe(true);
    // Where nothing at all comes through, nobody behind it has anything.
    const nothing = { at: "s", mentions: ["t2"], takes: ["signal"] } as const;
    expect(follows(nothing, { at: "t1", lacks: ["signal"] })).toBe(true);
  });

  // What a feed is good for shows at the receivers; who makes it stands above.
  test("where a receiver elsewhere finds that the feed from there suits nobody", () => {
    const victim = { at: "t1", lacks: ["suitable feed"] } as const;
    const seen = { at: "t2", takes: ["suitable feed"] } as const;
    expect(follows({ ...seen, names: "s" }, victim)).toBe(true);
    expect(follows({ ...seen, names: "p2" }, victim)).toBe(false);
    expect(follows({ at: "t2", names: "s", ...weak }, { at: "t1", ...short })).toBe(false);
  });

  test("not where it lacks nothing", () => {
    expect(follows({ at: "s", ...weak }, { at: "t1" })).toBe(false);
  });
});

describe("supply comes from below", () => {
  const fed = draw(
    {
      psu: ["power-inserter"],
      t: ["receiver-tv"],
      k: ["cable"],
      m: ["amp-masthead"],
      a: ["aerial-uhf"],
    },
    "a.out > m.in, m.out > k.in, k.out > psu.in, psu.out > t.in",
  );
  const unfed = { at: "m", lacks: ["supply"] } as const;

  test("and is taken by whatever stops it on the line", () => {
    expect(follows({ at: "psu", takes: ["supply"] }, unfed, fed)).toBe(true);
    expect(follows({ at: "t", names: "k", takes: ["supply"] }, unfed, fed)).toBe(true);
    expect(follows({ at: "psu", takes: ["signal"] }, unfed, fed)).toBe(false);
    expect(follows({ at: "t", takes: ["supply"] }, unfed, fed)).toBe(false);
  });

  // The converter's lead from above is one joint away, the inserter two.
  test("and what is nearer goes first, above or below", () => {
    const both = node({ at: "m", stage: 9, lacks: ["supply", "level"] });
    const below = node({ at: "psu", stage: 1, takes: ["supply"] });
    const above = node({ at: "a", stage: 1, takes: ["level"] });
    expect(rootOf([below, above, both], fed)).toBe(above);
  });

  test("and nobody else is asked of it", () => {
    expect(follows({ at: "psu", takes: ["supply"] }, { at: "m", lacks: ["level"] }, fed)).toBe(false);
  });
});

describe("of several explanations", () => {
  const victim = node({ at: "t1", names: "s", stage: 9, lacks: ["level", "quality"], natures: ["too weak"] });
  const rootAmong = (...causes: readonly Sketched[]) => {
    const nodes = causes.map((c) => node({ stage: 1, ...c }));
    const root = rootOf([...nodes, victim]);
    return root ? nodes.indexOf(root) : -1;
  };

  test("the culprit goes before what lies on the way", () => {
    expect(rootAmong({ at: "p1", ...weak }, { at: "s", ...weak, stage: 2 })).toBe(1);
  });

  test("what takes what is lacking goes before a like reason", () => {
    const like = { at: "s", natures: ["too weak"], stage: 1 } as const;
    expect(rootAmong(like, { at: "s", ...weak, stage: 2 })).toBe(1);
  });

  test("the graver goes first, then the earlier in kind", () => {
    expect(rootAmong({ at: "s", severity: "warning", ...weak }, { at: "s", stage: 2, ...weak })).toBe(1);
    expect(rootAmong({ at: "s", stage: 3, ...weak }, { at: "s", stage: 2, ...weak })).toBe(1);
  });

  test("the earlier in kind goes first, whether it names the culprit or stands there", () => {
    const naming = { at: "p2", names: "s", stage: 3, ...weak } as const;
    expect(rootAmong(naming, { at: "s", names: "a", stage: 2, ...weak })).toBe(1);
  });

  test("among equals the one nearer to the source goes first", () => {
    expect(rootAmong({ at: "p2", names: "s", ...weak }, { at: "k", names: "s", ...weak })).toBe(1);
  });

  test("the nearer goes first on the way", () => {
    const own = node({ at: "t1", stage: 9, ...short });
    const [far, near] = [node({ at: "k", stage: 1, ...weak }), node({ at: "p1", stage: 1, ...weak })];
    expect(rootOf([far, near, own])).toBe(near);
  });
});

test("what follows from something that follows has the first of all for its root", () => {
  const nodes = [
    node({ at: "a", stage: 1, takes: ["level"] }),
    node({ at: "s", stage: 2, lacks: ["level"], takes: ["quality"] }),
    node({ at: "t1", stage: 3, lacks: ["quality"] }),
  ];
  expect(rootOf(nodes)).toBe(nodes[0]);
});

test("of one kind, what is nearer to the source is the cause", () => {
  const like = { natures: ["too weak"], names: "k" } as const;
  const [there, here] = [node({ at: "t1", ...like }), node({ at: "p1", ...like })];
  expect(rootOf([here, there])).toBe(here);
});

test("of two at one place for a like reason, the graver is the cause", () => {
  const like = { at: "t1", natures: ["too weak"], names: "k" } as const;
  const [warning, error] = [node({ ...like, severity: "warning" }), node({ ...like, severity: "error" })];
  expect(rootOf([error, warning])).toBe(error);
});

describe("of several that name one culprit each explains by its own right", () => {
  const own = { natures: ["own"] } as const;
  const natures = ["too weak"] as const;
  const takes = ["level"] as const;

  test("what it takes of its own service", () => {
    const common = { names: "k", stage: 1, natures: [], takes } as const;
    const nodes = [
      node({ ...common, at: { part: "p1", service: "dab" } }),
      node({ ...common, at: { part: "p2", service: "tv" } }),
      node({ at: { part: "t1", service: "tv" }, names: "k", stage: 9, ...short }),
    ];
    expect(rootOf(nodes)).toBe(nodes[1]);
  });

  /** Two that follow from one cause, and a third that follows from the second of them alone. */
  const rootOfThird = (first: Partial<Sketched>, second: Partial<Sketched>, third: Partial<Sketched>) => {
    const cause = node({ at: "k", stage: 0, takes: ["supply"] });
    const common = { names: "k", lacks: ["supply"], stage: 1, natures, takes: [] } as const;
    const last = node({ at: "t1", names: "k", stage: 9, ...third });
    const root = rootOf([
      cause,
      node({ ...common, at: "p1", ...first }),
      node({ ...common, at: "p2", ...second }),
      last,
    ]);
    return root === cause ? "the cause of both" : root === last ? "itself" : "another";
  };

  test("by its rule", () => {
    const loop = { ...own, rule: "loop" } as const;
    expect(rootOfThird(loop, own, own)).toBe("the cause of both");
    expect(rootOfThird(loop, loop, own)).toBe("itself");
  });

  test("by its nature", () => {
    const wired = { natures: ["wiring"] } as const;
    expect(rootOfThird({}, wired, wired)).toBe("the cause of both");
    expect(rootOfThird({}, {}, wired)).toBe("itself");
  });

  test("by what it takes", () => {
    const taking = { natures, takes } as const;
    expect(rootOfThird({}, taking, short)).toBe("the cause of both");
    expect(rootOfThird({}, {}, short)).toBe("itself");
  });
});

// Two receivers in each other's way are found on another line than the one that suffers: only its names tell.
test("a loss follows from a quarrel that names both, wherever that is found", () => {
  const quarrel = { at: "p2", names: "t1", mentions: ["t2"], takes: ["user band"] } as const;
  const lost = { at: "t1", names: "t2", lacks: ["user band"] } as const;
  expect(follows(quarrel, lost)).toBe(true);
  expect(follows({ ...quarrel, takes: ["command"] }, { ...lost, lacks: ["command"] })).toBe(true);
  // Not where only one is named, nor where it is no quarrel: all is gone then, or it is only too weak.
  expect(follows({ ...quarrel, names: "k" }, lost)).toBe(false);
  expect(follows({ ...quarrel, takes: ["user band", "signal"] }, lost)).toBe(false);
  expect(follows({ ...quarrel, ...weak }, { ...lost, ...short })).toBe(false);
});

// Each of two takes the other for the culprit: whoever names both speaks of the quarrel.
test("a loss that names the other of two who are in each other's way follows from their quarrel", () => {
  const quarrel = { at: "t1", names: "t1", mentions: ["t2"], takes: ["user band"], stage: 1 } as const;
  const lost = { at: "t1", names: "t2", lacks: ["user band"], stage: 9 } as const;
  expect(follows(quarrel, lost)).toBe(true);
  expect(follows({ ...quarrel, at: "s", names: "s", mentions: ["t2"] }, lost)).toBe(false);
  expect(follows({ ...quarrel, takes: ["user band", "signal"] }, { ...lost, lacks: ["user band"] })).toBe(
    true,
  );
});

describe("parts in one circle", () => {
  const circle = (more: Parameters<typeof draw>[0], wires: string) =>
    draw({ x: ["combiner"], y: ["splitter"], a: ["aerial-uhf"], ...more }, wires);
  const loop = (at: string) => node({ at, rule: "loop", stage: 0, natures: ["wiring"] });

  test("are one fault", () => {
    const design = circle({}, "a.out > x.in1, x.out > y.in, y.out1 > x.in2");
    const nodes = [loop("x"), loop("y")];
    expect(rootOf(nodes, design)).toBe(rootOf(nodes.toReversed(), design));
  });

  test("two circles are two", () => {
    const design = circle(
      { u: ["combiner"], v: ["splitter"], b: ["aerial-uhf"] },
      "a.out > x.in1, x.out > y.in, y.out1 > x.in2, b.out > u.in1, u.out > v.in, v.out1 > u.in2",
    );
    const nodes = [loop("x"), loop("u")];
    expect(rootOf(nodes, design)).toBe(nodes[1]);
  });

  test("one circle behind another are two as well", () => {
    const design = circle(
      { u: ["combiner"], v: ["splitter"], p: ["attenuator"] },
      "a.out > x.in1, x.out > y.in, y.out1 > x.in2, y.out2 > p.in, p.out > u.in1, u.out > v.in, v.out1 > u.in2",
    );
    const nodes = [loop("x"), loop("u")];
    expect(rootOf(nodes, design)).toBe(nodes[1]);
    expect(rootOf(nodes.toReversed(), design)).toBe(nodes[0]);
  });

  test("are no cause, nor a consequence, of another fault there", () => {
    const design = circle({}, "a.out > x.in1, x.out > y.in, y.out1 > x.in2");
    const circular = { rule: "loop", natures: ["wiring"] } as const;
    expect(follows({ at: "x", ...circular }, { at: "y" }, design)).toBe(false);
    expect(follows({ at: "x" }, { at: "y", ...circular }, design)).toBe(false);
  });
});
