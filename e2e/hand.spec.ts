/**
 * A house of three rooms drawn by hand: a dish with an LNB of four outputs, an aerial with an amplifier of four, and
 * for each room a diplexer, a cable, an outlet, a TV set and a satellite receiver. Bounds: at most 25 actions of the
 * mouse, 120 key presses, 40 taps; a press, a drag and a tap count as one each. The bounds are our own.
 */
import type { Page } from "@playwright/test";
import {
  card,
  cards,
  download,
  drag,
  expectApart,
  type File,
  fromMenu,
  middle,
  open,
  port,
  wires,
} from "./app.ts";
import { expect, test } from "./test.ts";

/** What the finished house holds, and how its parts are connected. */
const PARTS = {
  dish: 1,
  "lnb-universal": 1,
  "aerial-uhf": 1,
  "amp-distribution": 1,
  "diplexer-combine": 3,
  cable: 3,
};
const ROOMS = { "outlet-diplexed": 3, "receiver-tv": 3, "receiver-sat": 3 };

async function openEmpty(page: Page): Promise<void> {
  await open(page, "/?example=house-universal");
  await fromMenu(page, "New design");
  await expect(cards(page)).toHaveCount(0);
}

async function expectHouse(page: Page): Promise<void> {
  await expect(wires(page)).toHaveCount(20);
  const { file } = await download(page);
  const counts: Record<string, number> = {};
  for (const { kind } of file.parts) counts[kind] = (counts[kind] ?? 0) + 1;
  expect(counts).toEqual({ ...PARTS, ...ROOMS });
  // Each room hangs on an output of its own of both LNB and amplifier, and each receiver on the socket meant for it.
  const into = (kind: string) => file.wires.filter((w) => kindOf(file, w.to[0]) === kind);
  expect(new Set(into("diplexer-combine").map((w) => w.from.join())).size).toBe(6);
  expect(into("receiver-tv").map((w) => w.from[1])).toEqual(["tv", "tv", "tv"]);
  expect(into("receiver-sat").map((w) => w.from[1])).toEqual(["sat", "sat", "sat"]);
  await expectApart(page);
  await expect(page.getByText("All 6 receivers work.").first()).toBeAttached();
}

const kindOf = (file: File, id: string) => file.parts.find((p) => p.id === id)?.kind;

/** For the report: how many it took. */
function counted(what: string, count: number): void {
  test.info().annotations.push({ type: what, description: `${count}` });
}

const list = (page: Page) => page.getByRole("dialog");

test("by mouse, in at most 25 actions", async ({ page }) => {
  await openEmpty(page);
  let actions = 0;
  const press = async (of: ReturnType<Page["locator"]>) => {
    actions += 1;
    await of.click();
  };
  const pull = async (part: string, output: string, to: { x: number; y: number }) => {
    actions += 1;
    await drag(page, port(page, part, output), to);
  };
  /** A wire pulled to an empty place right of its port, and the part that is taken there. */
  const add = async (part: string, output: string, words: string) => {
    const start = await middle(port(page, part, output));
    await pull(part, output, { x: start.x + 90, y: start.y });
    await press(list(page).getByRole("option", { name: words, exact: true }));
  };
  const tray = page.locator("[data-tray]");
  const inTray = async (name: string) => {
    if (!(await tray.isVisible())) await press(page.getByRole("button", { name: /parts/i }).first());
    await press(tray.getByRole("button", { name, exact: true }));
  };

  await inTray("Dish");
  await add("Dish 1", "Output feed", "Universal LNB, 4 outputs");
  await inTray("UHF aerial");
  await add("UHF aerial 1", "Output out", "Distribution amplifier, 4 outputs");
  await add("Distribution amplifier 1", "Output out 1", "Diplexer, combining");
  await pull(
    "Universal LNB 1",
    "Output out 1",
    await middle(port(page, "Diplexer, combining 1", "Input SAT")),
  );
  await add(
    "Diplexer, combining 1",
    "Output out",
    "Cable, 20 m + Outlet, TV and satellite + TV set + Satellite receiver",
  );
  // What was added is selected; the diplexer belongs to the room as well. Copies find the next outputs themselves.
  actions += 1;
  await card(page, "Diplexer, combining 1").click({ modifiers: ["Shift"], position: { x: 60, y: 18 } });
  const duplicate = page
    .getByRole("toolbar", { name: "Selection" })
    .getByRole("button", { name: "Duplicate" });
  await press(duplicate);
  await press(duplicate);

  await expectHouse(page);
  counted("mouse actions", actions);
  expect(actions).toBeLessThanOrEqual(25);
});

test("by keys, in at most 120 presses", async ({ page }) => {
  await openEmpty(page);
  let presses = 0;
  await page.locator(".canvas").focus();
  const type = async (...keys: readonly string[]) => {
    for (const key of keys) {
      presses += 1;
      await page.keyboard.press(key);
    }
  };
  /** Opens the list for what was added last, and takes its nth entry. */
  const next = async (digit: string) => {
    await type("e");
    await expect(list(page).getByRole("combobox")).toBeFocused();
    await type(digit);
    await expect(list(page)).toHaveCount(0);
    await expect(page.locator(".react-flow__node:focus")).toHaveCount(1);
  };
  await next("1");
  await next("3");
  await expect(card(page, "Universal LNB 1")).toBeVisible();
  for (const room of [1, 2, 3]) {
    // With nothing selected, the list holds what a reception begins with, and every free output.
    await type("Escape");
    if (room === 1) {
      await type("e");
      await expect(list(page).getByRole("combobox")).toBeFocused();
      await type(..."uhf", "Enter");
      await expect(card(page, "UHF aerial 1")).toBeFocused();
      await next("3");
      await next("4");
    } else {
      await type("e");
      await expect(list(page).getByRole("combobox")).toBeFocused();
      await type(..."amp", "Enter");
      await expect(page.getByText(/^Add to Distribution amplifier 1/).first()).toBeVisible();
      await type("4");
    }
    await expect(card(page, `Diplexer, combining ${room}`)).toBeVisible();
    // Its free input comes first; then the free outputs that it may be connected to.
    await type("j");
    await expect(list(page).getByRole("combobox", { name: "Port to connect", exact: true })).toBeFocused();
    await type("Enter");
    await expect(list(page).getByRole("combobox", { name: "Port to connect to" })).toBeFocused();
    await type("Enter");
    await expect(page.getByRole("dialog")).toHaveCount(0);
    await expect(page.locator(".canvas:focus, .canvas :focus")).toHaveCount(1);
    await next("3");
  }
  await expectHouse(page);
  counted("key presses", presses);
  expect(presses).toBeLessThanOrEqual(120);
});

test.describe("by touch", () => {
  test.use({ hasTouch: true, viewport: { width: 820, height: 1180 } });

  test("in at most 40 taps", async ({ page }) => {
    await openEmpty(page);
    let taps = 0;
    const tap = async (of: ReturnType<Page["locator"]>, position?: { x: number; y: number }) => {
      taps += 1;
      await of.tap(position ? { position } : {});
    };
    /** A port, an empty place, and what is taken there. */
    const add = async (part: string, output: string, words: string) => {
      const at = await middle(port(page, part, output));
      taps += 1;
      await page.touchscreen.tap(at.x, at.y);
      await expect(page.getByText(/^Connecting/).first()).toBeVisible();
      await tap(page.locator(".react-flow__pane"), { x: 300, y: 90 });
      await tap(list(page).getByRole("option", { name: words, exact: true }));
      await expect(list(page)).toHaveCount(0);
    };
    /** From the list that opens where nothing is selected. */
    const begin = async (name: string) => {
      await tap(page.getByRole("button", { name: "Add connected part…" }));
      await tap(
        list(page)
          .getByRole("option", { name: new RegExp(`^${name}`) })
          .first(),
      );
      await expect(list(page)).toHaveCount(0);
    };
    await begin("Dish");
    await add("Dish 1", "Output feed", "Universal LNB, 4 outputs");
    await tap(page.locator(".react-flow__pane"), { x: 300, y: 90 });
    await begin("UHF aerial");
    await add("UHF aerial 1", "Output out", "Distribution amplifier, 4 outputs");
    await add("Distribution amplifier 1", "Output out 1", "Diplexer, combining");
    for (const each of [
      port(page, "Universal LNB 1", "Output out 1"),
      port(page, "Diplexer, combining 1", "Input SAT"),
    ]) {
      const at = await middle(each);
      taps += 1;
      await page.touchscreen.tap(at.x, at.y);
    }
    await add(
      "Diplexer, combining 1",
      "Output out",
      "Cable, 20 m + Outlet, TV and satellite + TV set + Satellite receiver",
    );
    // A tap adds to the selection while several are being selected.
    await tap(page.getByRole("button", { name: "Select by tapping" }));
    await tap(card(page, "Diplexer, combining 1"), { x: 60, y: 18 });
    const duplicate = page
      .getByRole("toolbar", { name: "Selection" })
      .getByRole("button", { name: "Duplicate" });
    await tap(duplicate);
    await tap(duplicate);
    // The copies are in view now; wires that are out of it are not drawn.
    await page.setViewportSize({ width: 820, height: 2000 });
    await expectHouse(page);
    counted("taps", taps);
    expect(taps).toBeLessThanOrEqual(40);
  });
});
