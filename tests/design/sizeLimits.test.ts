import { describe, expect, test } from "vitest";
import { type Design, EMPTY_DESIGN, type Part } from "../../src/design/design.ts";
import { copyParts, pasteFragment } from "../../src/design/edits/clipboard.ts";
import { done, type Edit } from "../../src/design/edits/edit.ts";
import { insertIntoWire } from "../../src/design/edits/insert.ts";
import { planJoin } from "../../src/design/edits/join.ts";
import { setOption } from "../../src/design/edits/options.ts";
import { addPart, newPart } from "../../src/design/edits/parts.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { replaceKind } from "../../src/design/edits/replace.ts";
import { addVariant } from "../../src/design/edits/variants.ts";
import { readDesign, readStoredDesign, writeDesign } from "../../src/design/file.ts";
import { LIMITS } from "../../src/design/limits.ts";
import { portsOf } from "../../src/design/lookup.ts";
import { rowCount } from "../../src/design/sizeLimits.ts";
import { useApp } from "../../src/store/app.ts";
import { cpuMs } from "../cpuTime.ts";
import { drawn, must } from "./house.ts";

function part(kind: string, options: Record<string, unknown> = {}): Part {
  const made = newPart(EMPTY_DESIGN, kind, [0, 0], options);
  if (!made) throw new Error(`no part of kind ${kind}`);
  return made;
}

/** So many parts alike, with ids of their own. */
function many(count: number, like: Part, start = 0): Part[] {
  return Array.from({ length: count }, (_, i) => ({ ...like, id: `${like.kind}-${start + i}` }));
}

function refusal(edit: Edit): string {
  if (edit.ok) throw new Error("the edit was not refused");
  return edit.reason;
}

const cable = part("cable");
/** 200 rows, as many as one aerial may have, none of them typical. */
const longAerial = part("aerial-uhf", { channels: Array(200).fill({ channel: 45 }) });
const full: Design = { ...EMPTY_DESIGN, parts: many(5_000, cable) };

/** Multiswitches in a row, each output on the next one's input: as many wires as asked for. */
function wired(count: number): Design {
  const like = part("multiswitch", { satellites: 4, outputs: 32 });
  const ins = portsOf(like).filter((port) => port.side === "in");
  const outs = portsOf(like).filter((port) => port.side === "out");
  const each = Math.min(ins.length, outs.length);
  const parts = many(Math.ceil(count / each) + 1, like);
  const wires = Array.from({ length: count }, (_, i) => {
    const at = Math.floor(i / each);
    return {
      from: [parts[at]?.id ?? "", outs[i % each]?.id ?? ""] as const,
      to: [parts[at + 1]?.id ?? "", ins[i % each]?.id ?? ""] as const,
    };
  });
  return { ...EMPTY_DESIGN, parts, wires };
}

describe("An edit that would make a design larger than it may be is refused, with the number", () => {
  const parts = (n: string) =>
    `A design holds at most 5000 parts, all variants together; this would make ${n}.`;
  const wires = (n: string) =>
    `A design holds at most 20\u202f000 wires, all variants together; this would make ${n}.`;
  const rows = (n: string) =>
    `A design holds at most 60\u202f000 rows in the lists of its parts, all variants together; this would make ${n}.`;

  test("a new part", () => {
    expect(refusal(addPart(full, cable))).toBe(parts("5,001"));
    expect(addPart({ ...full, parts: full.parts.slice(1) }, cable).ok).toBe(true);
  });

  test("a paste", () => {
    const twelve = copyParts(full, new Set(full.parts.slice(0, 12).map(({ id }) => id)));
    expect(refusal(pasteFragment(full, twelve))).toBe(parts("5,012"));
  });

  test("a copy as a variant, with all that rests", () => {
    const half = { ...EMPTY_DESIGN, parts: many(2_000, cable) };
    const two = must(addVariant(half, "Plan A"));
    expect(refusal(addVariant(two, "Plan B"))).toBe(parts("6,000"));
  });

  test("a variant beyond the twentieth", () => {
    let design: Design = EMPTY_DESIGN;
    for (let i = 1; i <= 20; i++) design = must(addVariant(design, `Plan ${i}`));
    expect(refusal(addVariant(design, "Plan 21"))).toBe(
      "A design holds at most 20 variants beside the active one; this would make 21.",
    );
  });

  test("a part put into a wire", () => {
    const line = drawn(["aerial-uhf", "receiver-tv"], ["aerial1/out > tv1/in"]);
    const crowded = { ...line, parts: [...line.parts, ...many(4_998, cable)] };
    const wire = "aerial1.out>tv1.in";
    expect(refusal(insertIntoWire(crowded, part("amp-distribution"), wire))).toBe(parts("5,001"));
  });

  test("a wire, and a part that would split one", () => {
    const design = wired(20_000);
    const ends = drawn(["aerial-uhf", "receiver-tv"]);
    const more = { ...design, parts: [...design.parts, ...ends.parts] };
    expect(refusal(planJoin(more, ["aerial1", "out"], ["tv1", "in"]))).toBe(wires("20,001"));
    const line = { ...more, wires: more.wires.slice(1) };
    const joined = must(planJoin(line, ["aerial1", "out"], ["tv1", "in"]));
    expect(refusal(insertIntoWire(joined, part("cable"), "aerial1.out>tv1.in"))).toBe(wires("20,001"));
  });

  // 300 lists of 200 rows are 60,000.
  const listed: Design = { ...EMPTY_DESIGN, parts: [...many(300, longAerial), part("aerial-uhf")] };

  test("rows in a list", () => {
    expect(rowCount(listed)).toBe(60_000);
    expect(refusal(setOption(listed, "aerial1", "channels", [{ channel: 44 }]))).toBe(rows("60,001"));
    expect(refusal(addPart(listed, { ...longAerial, id: "x" }))).toBe(rows("60,200"));
    expect(refusal(pasteFragment(listed, { parts: [longAerial], wires: [] }))).toBe(rows("60,200"));
  });

  test("what already holds more, by an edition that allowed it, may change and shrink, but not grow", () => {
    const stacked = part("lnb-stacked", { ownBands: Array(32).fill({}) });
    const design = { ...EMPTY_DESIGN, parts: [...many(299, longAerial), ...many(6, stacked), stacked] };
    // 299 · 200 + 7 · 32 = 60,024.
    expect(rowCount(design)).toBe(60_024);
    expect(replaceKind(design, stacked.id, "stacking-converter").ok).toBe(true);
    expect(removeParts(design, new Set([stacked.id]), new Set()).ok).toBe(true);
    expect(refusal(addPart(design, { ...stacked, id: "more" }))).toBe(rows("60,056"));
  });

  test("a list at its typical value counts nothing, as it is not written", () => {
    expect(rowCount({ ...EMPTY_DESIGN, parts: many(5_000, part("dish")) })).toBe(0);
  });

  test("whoever thought of the change: the store refuses it as well", () => {
    const store = useApp.getState();
    store.openDesign(full);
    const more = { ...full, parts: [...full.parts, cable] };
    expect(store.change(done(more))).toBe(false);
    expect(useApp.getState().design).toBe(full);
    expect(useApp.getState().notices.at(-1)?.text).toBe(parts("5,001"));
  });
});

describe("The largest designs that edits allow", () => {
  const longId = (stem: string, i: number) =>
    `${stem}${"x".repeat(40)}`.slice(0, 35) + `${i}`.padStart(5, "0");
  /** A sign that takes six in a file: \u0001. */
  const label = "\u0001".repeat(LIMITS.labelLength);
  const at = [-999_999.123_456_789, 999_999.123_456_789] as const;
  /** Every number as long as numbers get, so that each row and each option is as long as it may be. */
  const row = {
    frequencyMHz: 10_729.123_456_789,
    polarisation: "H",
    symbolRateMsps: 27.512_345_678_901,
    mode: "dvbs2-8psk-2/3",
    rollOff: "0.20",
    eirpOffsetDb: -3.123_456_789_012_34,
  };

  function largest(): Design {
    const heart = wired(20_000);
    const ids = new Map(heart.parts.map(({ id }, i) => [id, longId("switch", i)]));
    const dish = part("dish", {
      transponders: Array.from({ length: 200 }, (_, i) => ({
        ...row,
        frequencyMHz: row.frequencyMHz + i / 7,
      })),
      orbitalPositionDegE: -19.123_456_789,
      diameterM: 1.234_567_890_123,
      eirpDbw: 51.123_456_789_01,
      satelliteName: "\u0001".repeat(24),
    });
    const { transponders: _, ...rest } = dish.options;
    const plain = part("dish", rest);
    const switches = heart.parts.map((each) => ({ ...each, id: ids.get(each.id) ?? "", label, at }));
    const dishes = [...Array(300).fill(dish), ...Array(4_700 - switches.length).fill(plain)];
    return {
      ...EMPTY_DESIGN,
      parts: [...switches, ...dishes.map((each, i) => ({ ...each, id: longId("dish", i), label, at }))],
      wires: heart.wires.map(({ from, to }) => ({
        from: [ids.get(from[0]) ?? "", from[1]] as const,
        to: [ids.get(to[0]) ?? "", to[1]] as const,
      })),
    };
  }

  test("is written as a file that opens again, in full size, in seconds of processor time", () => {
    const design = largest();
    expect(rowCount(design)).toBe(LIMITS.rows);
    expect(design.wires.length).toBe(LIMITS.wires);
    const start = cpuMs();
    const text = writeDesign(design);
    expect(text.length).toBeLessThan(LIMITS.textLength);
    const reading = readDesign(text);
    expect(reading.ok ? reading.notes : reading.problem).toEqual([]);
    expect(cpuMs() - start).toBeLessThan(20_000);
    // Sign by sign, as comparing so large objects takes longer than reading them.
    expect(reading.ok && writeDesign(reading.design) === text).toBe(true);
  });

  test("266 dishes with plans of their own, and 5,000 parts of a house: more than older files could hold", () => {
    const own = part("dish", { transponders: Array(200).fill(row) });
    const dishes = { ...EMPTY_DESIGN, parts: many(266, own) };
    expect(readDesign(writeDesign(dishes)).ok).toBe(true);
    expect(writeDesign(dishes).length).toBeGreaterThan(5_000_000);
    expect(writeDesign(full).length).toBeLessThan(1_000_000);
  });
});

describe("What the app itself has stored opens whatever its size", () => {
  test.each([
    { name: "more parts than edits allow", design: { ...EMPTY_DESIGN, parts: many(5_012, cable) } },
    { name: "more rows than edits allow", design: { ...EMPTY_DESIGN, parts: many(301, longAerial) } },
    { name: "more wires than edits allow", design: wired(20_001) },
    {
      name: "more variants than edits allow",
      design: {
        ...EMPTY_DESIGN,
        variants: Array.from({ length: 21 }, (_, i) => ({ name: `P${i}`, parts: [], wires: [] })),
      },
    },
  ])("$name: refused from outside, opened from the storage", ({ design }) => {
    const text = writeDesign(design);
    const outside = readDesign(text);
    expect(outside.ok ? "" : outside.problem).toMatch(
      /^There are [\d,]+ .*; a design holds at most [\d,]+\.$/,
    );
    expect(readStoredDesign(text)).toEqual({ ok: true, design, notes: [] });
  });

  test("a text longer than a file may be", () => {
    const design = { ...EMPTY_DESIGN, parts: many(3, cable) };
    const text = writeDesign(design) + " ".repeat(LIMITS.textLength);
    expect(readDesign(text).ok).toBe(false);
    expect(readStoredDesign(text)).toEqual({ ok: true, design, notes: [] });
  });

  test("but not what is broken: that is told as of any file", () => {
    expect(readStoredDesign('{"format"')).toEqual(readDesign('{"format"'));
    expect(readStoredDesign("{").ok).toBe(false);
  });
});
