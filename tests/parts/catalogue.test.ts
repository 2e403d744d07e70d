import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { CATALOGUE, defaultOptions, kindOf, kindsOf } from "../../src/parts/catalogue.ts";
import { type AnyOptions, FAMILY_NAMES, type PartKind, type Path } from "../../src/parts/contract.ts";
import { fieldMeta } from "../../src/parts/fields.ts";
import { SYMBOLS } from "../../src/parts/symbols.ts";
import { gainDbAt } from "../../src/signal/gain.ts";
import type { Response } from "../../src/signal/response.ts";
import { anyOptions } from "./anyOptions.ts";
import { waysBetween } from "./walk.ts";

const each = CATALOGUE.map((kind) => ({ key: kind.kind, kind }));
const CONTEXTS = [
  { id: "x", powered: true },
  { id: "x", powered: false },
];

/** The keys of this list are promised to files and links: a key that is missing breaks old designs. */
const PROMISED =
  `dish aerial-uhf aerial-dab aerial-fm pick-up lnb-universal lnb-quattro lnb-wideband lnb-stacked
  stacking-converter multiswitch position-switch splitter tap t-joint combiner diplexer-combine diplexer-split
  triplexer-combine triplexer-split filter filter-mobile filter-channel amp-masthead amp-distribution amp-if dish-motor
  attenuator equaliser power-inserter dc-block load cable bad-joint outlet-sat outlet-sat-twin outlet-tv
  outlet-diplexed outlet-triplexed outlet-quad outlet-through outlet-end receiver-tv receiver-dab receiver-fm
  receiver-sat receiver-sat-twin receiver-hybrid receiver-stacked meter aerial-vhf aerial-active cable-entry modulator
  amp-masthead-inputs amp-launch amp-channel amp-trunks line-fitting lnb-monoblock
  dish-c-band dish-ka-band lnb-c-band lnb-ka-band`.split(/\s+/);

describe("the catalogue", () => {
  test("has every promised kind, each key once", () => {
    const keys = CATALOGUE.map((k) => k.kind);
    expect(new Set(keys).size).toBe(keys.length);
    expect(PROMISED.filter((key) => !keys.includes(key))).toEqual([]);
  });

  test.each(["__proto__", "constructor", "toString", "", "Cable"])("knows no kind %j", (key) => {
    expect(kindOf(key)).toBeUndefined();
  });

  test("spreads all kinds over the seven families", () => {
    const families = Object.keys(FAMILY_NAMES) as (keyof typeof FAMILY_NAMES)[];
    const counts = families.map((family) => kindsOf(family).length);
    expect(Math.min(...counts)).toBeGreaterThan(0);
    expect(counts.reduce((a, b) => a + b)).toBe(CATALOGUE.length);
  });

  test("gives no two kinds the same name", () => {
    expect(new Set(CATALOGUE.map((k) => k.name)).size).toBe(CATALOGUE.length);
  });
});

describe.each(each)("$key", ({ kind }) => {
  test("starts from options its own schema accepts unchanged", () => {
    const options = defaultOptions(kind);
    expect(kind.options.parse(options)).toEqual(options);
  });

  test("describes every option for the form, and says where electrical values come from", () => {
    const start = defaultOptions(kind);
    for (const [key, field] of Object.entries(kind.options.shape)) {
      const meta = field instanceof z.ZodType ? fieldMeta(field) : undefined;
      expect(meta, key).toBeDefined();
      expect(meta?.label.length, key).toBeGreaterThan(0);
      // A default of nought is a setting left alone, not a typical value.
      const typical = ["dB", "dBµV", "mA", "V", "dBi"].includes(meta?.unit ?? "") && start[key] !== 0;
      if (typical) expect(meta?.source, key).toBeTruthy();
    }
  });

  test("keeps its promises for any options", () => {
    fc.assert(
      fc.property(anyOptions(kind), (options) => {
        expectSoundPorts(kind, options);
        for (const context of CONTEXTS) expectSoundSignal(kind, options, context);
        expectSoundPower(kind, options);
        expectSoundUse(kind, options);
        expect(SYMBOLS[kind.symbol(options)]).toBeDefined();
        expect(kind.caption(options)).toMatch(/\S/);
        expect(kind.caption(options)).not.toMatch(/NaN|undefined|Infinity|\[object/);
      }),
      { numRuns: 60 },
    );
  });

  test("gives out no more power than goes in, where nothing in it amplifies", () => {
    let isPassive = false;
    let ways = 0;
    fc.assert(
      fc.property(anyOptions(kind), (options) => {
        const counted = expectNoPowerFromNothing(kind, options);
        isPassive ||= counted !== null;
        ways += counted ?? 0;
      }),
      { numRuns: 60 },
    );
    // What has inputs and outputs, and amplifies nothing, was seen to hand something on.
    const start = defaultOptions(kind);
    const isWay = portIds(kind, start, "in").length > 0 && portIds(kind, start, "out").length > 0;
    if (isPassive && isWay) expect(ways).toBeGreaterThan(0);
  });
});

const portIds = (kind: PartKind, options: AnyOptions, side: "in" | "out") =>
  kind
    .ports(options)
    .filter((p) => p.side === side)
    .map((p) => p.id);

function expectSoundPorts(kind: PartKind, options: AnyOptions) {
  const ids = kind.ports(options).map((p) => p.id);
  expect(ids.length).toBeGreaterThan(0);
  expect(new Set(ids).size).toBe(ids.length);
  // Inner nodes begin with "#", so no port may; wire ids use "." and ">".
  for (const id of ids) expect(id).toMatch(/^[a-z][a-z0-9-]*$/);
  if (kind.inline) {
    expect(portIds(kind, options, "in")).toContain(kind.inline.in);
    expect(portIds(kind, options, "out")).toContain(kind.inline.out);
  }
}

function expectSoundSignal(kind: PartKind, options: AnyOptions, context: { id: string; powered: boolean }) {
  const { paths = [], emits = [], stacks = [], isolationDb } = kind.signal(options, context);
  const ins = portIds(kind, options, "in");
  const outs = portIds(kind, options, "out");
  const inner = new Set(paths.flatMap((p) => [p.from, p.to]).filter((n) => n.startsWith("#")));
  for (const path of paths) {
    expect([...ins, ...inner]).toContain(path.from);
    expect([...outs, ...inner]).toContain(path.to);
    expectFinite(path.response);
    if (path.noiseFigureDb !== undefined) expect(path.noiseFigureDb).toBeGreaterThanOrEqual(0);
    if (path.condition) expect(outs).toContain(path.condition.port);
    if (path.rating) expect(Number.isFinite(path.rating.outputDbuv + path.rating.ratioDb)).toBe(true);
  }
  for (const { port } of emits) expect([...outs, ...inner]).toContain(port);
  for (const stack of stacks) {
    expect(outs).toContain(stack.to);
    for (const node of stack.from) expect([...ins, ...inner]).toContain(node);
  }
  if (isolationDb !== undefined) expect(isolationDb).toBeGreaterThanOrEqual(0);
  if (context.powered) expectReachable({ ins, outs, paths, emits, stacks, kind, options });
}

function expectReachable(o: {
  ins: readonly string[];
  outs: readonly string[];
  paths: readonly Path[];
  emits: readonly { readonly port: string }[];
  stacks: readonly { readonly from: readonly string[]; readonly to: string }[];
  kind: PartKind;
  options: AnyOptions;
}) {
  const fed = new Set([
    ...o.paths.map((p) => p.to),
    ...o.emits.map((e) => e.port),
    ...o.stacks.map((s) => s.to),
  ]);
  const read = new Set([
    ...o.paths.map((p) => p.from),
    ...o.stacks.flatMap((s) => s.from),
    ...(o.kind.reception?.(o.options).inputs.map((i) => i.port) ?? []),
  ]);
  if (o.kind.kind === "load") return;
  // A receiver's loop-out is switched by the receiver itself: on, asleep or unplugged, it may give nothing.
  const isSwitchedOff = (id: string) => o.kind.reception !== undefined && id === "loop";
  expect(o.outs.filter((id) => !fed.has(id) && !isSwitchedOff(id))).toEqual([]);
  expect(o.ins.filter((id) => !read.has(id))).toEqual([]);
  const inner = [...fed, ...read].filter((n) => n.startsWith("#"));
  expect(inner.filter((n) => !fed.has(n) || !read.has(n))).toEqual([]);
}

function expectFinite(response: Response) {
  switch (response.type) {
    case "flat":
      expect(Number.isFinite(response.db)).toBe(true);
      break;
    case "cable":
      expect(Number.isFinite(response.k1 + response.k2 + response.lengthM + response.temperatureC)).toBe(
        true,
      );
      break;
    case "curve":
      response.points.forEach(([f, db], i) => {
        expect(Number.isFinite(f + db)).toBe(true);
        expect(f).toBeGreaterThanOrEqual(response.points[i - 1]?.[0] ?? 0);
      });
      break;
    case "windows":
    case "notch":
      response.windows.forEach((w, i) => {
        expect(w.toMHz).toBeGreaterThanOrEqual(w.fromMHz);
        expect(w.fromMHz).toBeGreaterThan(response.windows[i - 1]?.toMHz ?? 0);
      });
      expect(response.rejectionDb).toBeGreaterThan(0);
      break;
    case "series":
      response.of.forEach(expectFinite);
  }
}

function expectSoundPower(kind: PartKind, options: AnyOptions) {
  const { paths = [], supplies = [], load, shorts = [], resistors = [], switches = [] } = kind.power(options);
  const ins = portIds(kind, options, "in");
  const outs = portIds(kind, options, "out");
  for (const path of paths) {
    expect(outs).toContain(path.from);
    expect(ins).toContain(path.to);
    expect(path.ohms ?? 0).toBeGreaterThanOrEqual(0);
    expect(path.dropVolts ?? 0).toBeGreaterThanOrEqual(0);
  }
  for (const supply of supplies) {
    expect(supply.down ? outs : ins).toContain(supply.port);
    expect(supply.volts13).toBeGreaterThan(0);
    expect(supply.volts18).toBeGreaterThanOrEqual(supply.volts13);
    expect(supply.limitMa).toBeGreaterThan(0);
    expect(supply.kind === "commands").toBe(supply.request !== undefined);
  }
  for (const { port } of switches) expect(outs).toContain(port);
  // By outputs, or by inputs where the head end feeds it; never by both.
  for (const port of load?.ports ?? [])
    expect(ins.includes(load?.ports[0] ?? "") ? ins : outs).toContain(port);
  for (const port of [...shorts, ...resistors.map((r) => r.port)]) expect([...ins, ...outs]).toContain(port);
  if (load) expect(load.milliamps).toBeGreaterThanOrEqual(0);
}

function expectSoundUse(kind: PartKind, options: AnyOptions) {
  const reception = kind.reception?.(options);
  for (const input of reception?.inputs ?? []) {
    expect(portIds(kind, options, "in")).toContain(input.port);
    expect(input.tunesToMHz).toBeGreaterThanOrEqual(input.tunesFromMHz);
    expect(input.tuners).toBeGreaterThanOrEqual(1);
  }
  const offered = new Set(reception?.inputs.flatMap((i) => i.services) ?? []);
  for (const service of reception?.wants ?? []) expect(offered).toContain(service);
  for (const { port, services } of kind.delivery?.(options).sockets ?? []) {
    expect(portIds(kind, options, "out")).toContain(port);
    expect(services.length).toBeGreaterThan(0);
  }
}

/**
 * Conservation of energy: what a passive part hands to all its outputs together is at most what came in.
 * And reciprocity: nor can one output collect more than its share of each input.
 * Leakage past a filter's edge is left out of the count.
 * Tells at how many frequencies something came through a way, or null where the law has nothing to say.
 */
function expectNoPowerFromNothing(kind: PartKind, options: AnyOptions): number | null {
  const treatment = kind.signal(options, { id: "x", powered: true });
  const { paths = [], stacks = [] } = treatment;
  const passive = paths.every((p) => p.noiseFigureDb === undefined && !p.condition && !p.loMHz);
  if (!passive || stacks.length > 0) return null;
  let ways = 0;
  // Ways that take one channel each are asked in the middle of it.
  const taken = paths.flatMap(({ takes }) =>
    takes?.fromMHz !== undefined && takes.toMHz !== undefined ? [(takes.fromMHz + takes.toMHz) / 2] : [],
  );
  for (const f of [5, 98, 225, 474, 690, 862, 950, 1350, 2150, 2350, ...taken]) {
    const sums = new Map<string, number>();
    for (const from of portIds(kind, options, "in"))
      for (const to of portIds(kind, options, "out"))
        for (const way of waysBetween(treatment, from, to)) {
          if (way.some((path) => !isTaken(path, f) || isStopped(path.response, f))) continue;
          const ratio = 10 ** (way.reduce((sum, path) => sum + gainDbAt(path.response, f), 0) / 10);
          ways++;
          for (const port of [from, to]) sums.set(port, (sums.get(port) ?? 0) + ratio);
        }
    for (const [port, sum] of sums) expect(sum, `${port} at ${f} MHz`).toBeLessThanOrEqual(1 + 1e-9);
  }
  return ways;
}

function isTaken({ takes }: Path, f: number): boolean {
  return f >= (takes?.fromMHz ?? 0) && f < (takes?.toMHz ?? Number.POSITIVE_INFINITY);
}

function isStopped(response: Response, f: number): boolean {
  if (response.type === "series") return response.of.some((r) => isStopped(r, f));
  if (response.type !== "windows") return false;
  return !response.windows.some((w) => f >= w.fromMHz && f <= w.toMHz);
}
