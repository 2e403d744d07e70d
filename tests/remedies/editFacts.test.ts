/** What an edit did, told from two designs alone; what each edit does is its contract (`src/design/edits/`). */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import type { Edit } from "../../src/design/edits/edit.ts";
import { insertIntoWire } from "../../src/design/edits/insert.ts";
import { planJoin } from "../../src/design/edits/join.ts";
import { setOption } from "../../src/design/edits/options.ts";
import { addPart, moveParts, newPart, rename, retitle } from "../../src/design/edits/parts.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { replaceKind } from "../../src/design/edits/replace.ts";
import { addVariant, switchVariant } from "../../src/design/edits/variants.ts";
import { editFacts } from "../../src/remedies/editFacts.ts";
import { draw } from "../draw.ts";

const START = draw(
  { uhf: ["aerial-uhf"], run: ["cable", { lengthM: 10 }], tv: ["receiver-tv"], spare: ["aerial-dab"] },
  "uhf.out > run.in, run.out > tv.in",
);

function made(edit: Edit): Design {
  if (!edit.ok) throw new Error(edit.reason);
  return edit.design;
}

const inline = newPart(START, "attenuator", [0, 300]);
if (!inline) throw new Error("no attenuator");
const withInline = made(addPart(START, inline));
const cut = made(removeParts(START, new Set(), new Set(["run.out>tv.in"])));
const nudged = (...ids: string[]) =>
  made(moveParts(START, new Map(ids.map((id) => [id, [8, 800] as const]))));

describe("an edit", () => {
  test("that adds a part", () => {
    expect(editFacts(START, withInline)).toMatchObject({ what: "added", parts: [inline], wires: 0 });
  });

  test("that puts a part into a wire names both its ends", () => {
    expect(editFacts(START, made(insertIntoWire(START, inline, "run.out>tv.in")))).toMatchObject({
      what: "inserted",
      part: { id: inline.id },
      from: { id: "run" },
      to: { id: "tv" },
    });
  });

  test("that deletes a part in line tells that the wire is closed, at the end of a line it does not", () => {
    expect(editFacts(START, made(removeParts(START, new Set(["run"]), new Set())))).toMatchObject({
      what: "removed",
      parts: [{ id: "run" }],
      isClosed: true,
    });
    expect(editFacts(START, made(removeParts(START, new Set(["tv"]), new Set())))).toMatchObject({
      what: "removed",
      isClosed: false,
    });
  });

  test("that swaps a part for one of another kind", () => {
    expect(editFacts(START, made(replaceKind(START, "spare", "aerial-fm")))).toMatchObject({
      what: "replaced",
      parts: [{ before: { kind: "aerial-dab" }, after: { kind: "aerial-fm" } }],
    });
  });

  test("that sets a value names the option", () => {
    expect(editFacts(START, made(setOption(START, "run", "lengthM", 50)))).toMatchObject({
      what: "set",
      parts: [{ after: { id: "run" }, options: ["lengthM"] }],
    });
  });

  test("that connects or disconnects", () => {
    expect(editFacts(START, cut)).toMatchObject({
      what: "disconnected",
      wires: [{ from: { id: "run" }, to: { id: "tv" } }],
    });
    expect(editFacts(cut, made(planJoin(cut, ["run", "out"], ["tv", "in"])))).toMatchObject({
      what: "connected",
      wires: [{ from: { id: "run" }, to: { id: "tv" } }],
    });
  });

  test("that moves parts tells one from all", () => {
    expect(editFacts(START, nudged("tv"))).toMatchObject({
      what: "moved",
      parts: [{ id: "tv" }],
      isAll: false,
    });
    expect(editFacts(START, nudged("uhf", "run", "tv", "spare"))).toMatchObject({
      what: "moved",
      isAll: true,
    });
  });

  test("that gives a part or the design another name", () => {
    expect(editFacts(START, made(rename(START, "tv", "Den")))).toMatchObject({
      what: "renamed",
      parts: [{ before: { label: "tv" }, after: { label: "Den" } }],
    });
    expect(editFacts(START, made(retitle(START, "House")))).toEqual({ what: "retitled", title: "House" });
  });

  test("that makes a variant or turns to one", () => {
    const two = made(addVariant(START, "Plan A"));
    expect(editFacts(START, two)).toEqual({ what: "variant", name: "Plan A" });
    expect(editFacts(two, made(switchVariant(two, "As built")))).toEqual({
      what: "variant",
      name: "As built",
    });
  });

  test("of several sorts is told by their numbers", () => {
    const after = made(removeParts(withInline, new Set(["spare"]), new Set()));
    expect(editFacts(START, after)).toEqual({ what: "several", added: 1, removed: 1, changed: 0 });
  });

  test("that changes nothing tells nothing", () => {
    expect(editFacts(START, START)).toBeNull();
    expect(editFacts(START, { ...START, parts: [...START.parts] })).toBeNull();
  });
});
