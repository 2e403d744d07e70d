/**
 * What a hand does on the drawing beside building: names and lengths in place, the menu, copies from window to window,
 * wires pulled from far away, cards let go on others, and where the keys are afterwards. What a key or a press is to
 * do follows the usual ways of desktop and touch systems: F2, Menu or Shift+F10, Enter, Escape, a long press.
 */
import type { Page } from "@playwright/test";
import {
  card,
  cards,
  download,
  drag,
  expectApart,
  fromMenu,
  messages,
  middle,
  onWire,
  open,
  ownDesign,
  showPane,
  stripOf,
  titleOf,
  upload,
  verdict,
  waitUntilSaved,
  wire,
  wires,
} from "./app.ts";
import { expect, test } from "./test.ts";

const HOUSE = "/?example=house-universal";
const DROP = "Drop living room";

const form = (page: Page, name: string) => page.getByRole("dialog", { name });
const menu = (page: Page) => page.getByRole("menu");
const undo = (page: Page) => page.getByRole("button", { name: "Undo", exact: true }).first();
const canvas = (page: Page) => page.getByRole("group", { name: "Canvas", exact: true });
/** What of a card shows its name, and nothing else. */
const nameOn = (page: Page, label: string) => card(page, label).locator(".node-card-name");

/** From the menu of the canvas, opened by its key while nothing is selected. */
async function pasteByMenu(page: Page): Promise<void> {
  await canvas(page).focus();
  await page.keyboard.press("Escape");
  await page.keyboard.press("ContextMenu");
  await menu(page)
    .getByRole("menuitem", { name: /^Paste/ })
    .press("Enter");
}

test("names and lengths are changed where the part stands", async ({ page }) => {
  await open(page, HOUSE);
  await test.step("F2 on a card: Enter keeps the name, one undo brings the former back", async () => {
    await card(page, "LNB").click({ position: { x: 60, y: 12 } });
    await page.keyboard.press("F2");
    await expect(form(page, "New name").getByLabel("Name")).toBeFocused();
    await page.keyboard.type("Roof head");
    await page.keyboard.press("Enter");
    await expect(card(page, "Roof head")).toBeFocused();
    await undo(page).hover();
    await expect(page.getByRole("tooltip")).toContainText("Undo: “LNB” renamed to “Roof head”.");
    await page.mouse.move(700, 400, { steps: 4 });
    await card(page, "Roof head").press("ControlOrMeta+z");
    await expect(card(page, "LNB")).toBeFocused();
    await expect(undo(page)).toBeDisabled();
    await page.getByRole("button", { name: "Redo", exact: true }).hover();
    await expect(page.getByRole("tooltip")).toContainText("Redo: “LNB” renamed to “Roof head”.");
  });

  await test.step("Escape leaves it as it was, an empty name is refused", async () => {
    await nameOn(page, "TV living room").dblclick();
    await expect(form(page, "New name")).toBeVisible();
    await page.keyboard.press("Delete");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("alert")).toHaveText("“TV living room” needs a name.");
    await page.keyboard.type("Screen");
    await page.keyboard.press("Escape");
    await expect(form(page, "New name")).toHaveCount(0);
    await expect(card(page, "TV living room")).toBeFocused();
  });

  await test.step("two presses on a pill open its length, which counts while it is typed", async () => {
    const pill = card(page, DROP);
    await pill.dblclick();
    const length = form(page, "Length and grade").getByRole("spinbutton", { name: "Length" });
    await expect(length).toBeFocused();
    await page.keyboard.type("33");
    await expect(pill).toContainText("33 m");
    await page.keyboard.press("Tab");
    await expect(form(page, "Length and grade").getByRole("combobox", { name: "Grade" })).toBeFocused();
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Enter");
    await expect(pill).toBeFocused();
    await expect(pill).toContainText("33 m");
    await page.keyboard.press("ControlOrMeta+z");
    await expect(pill).toContainText("16 m");

    await page.keyboard.press("Enter");
    await expect(length).toBeFocused();
    await page.keyboard.type("50");
    await expect(pill).toContainText("50 m");
    const grade = form(page, "Length and grade").getByRole("combobox", { name: "Grade" });
    const former = await grade.inputValue();
    await grade.selectOption({ index: 4 });
    await expect(grade).not.toHaveValue(former);
    await page.keyboard.press("Escape");
    await expect(pill).toBeFocused();
    await expect(pill).toContainText("16 m");
    await expect(undo(page)).toBeDisabled();

    await page.keyboard.press("F2");
    await expect(form(page, "New name").getByLabel("Name")).toBeFocused();
    await page.keyboard.type("Riser");
    await page.keyboard.press("Enter");
    await expect(card(page, "Riser")).toBeFocused();
  });
});

test("the menu holds what can be done to what lies under the pointer, or has the focus", async ({ page }) => {
  await open(page, HOUSE);
  const heading = menu(page).locator(".menu-heading");
  const close = async () => {
    await page.keyboard.press("Escape");
    await expect(menu(page)).toHaveCount(0);
  };
  await test.step("by the other button of the mouse", async () => {
    await (await stripOf(page, "LNB", "Diplexer living room")).click({ button: "right" });
    await expect(heading).toHaveText("“LNB”");
    await close();
    await expect(card(page, "LNB")).toBeFocused();

    await page.locator(".react-flow__pane").click({ button: "right", position: { x: 430, y: 40 } });
    await expect(heading).toHaveText("Canvas");
    await menu(page)
      .getByRole("menuitem", { name: /^Select all/ })
      .click();
    await expect(page.getByRole("toolbar", { name: "Selection" })).toContainText("23 parts");
    await card(page, DROP).click({ button: "right" });
    await expect(heading).toHaveText("23 parts");
    await close();
    await page.locator(".react-flow__pane").click({ position: { x: 430, y: 40 } });

    const at = await onWire(page, "Loft amplifier", "Drop bedroom 2");
    await page.mouse.click(at.x, at.y, { button: "right" });
    await expect(heading).toHaveText("Wire from “Loft amplifier” to “Drop bedroom 2”");
    await menu(page)
      .getByRole("menuitem", { name: /^Insert a part/ })
      .click();
    await expect(form(page, "Insert into this wire")).toBeVisible();
    await close();
    await page.keyboard.press("Escape");
    await expect(form(page, "Insert into this wire")).toHaveCount(0);
  });

  await test.step("by key", async () => {
    await card(page, "Diplexer bedroom 1").focus();
    await page.keyboard.press("Shift+F10");
    await expect(heading).toHaveText("“Diplexer bedroom 1”");
    await menu(page)
      .getByRole("menuitem", { name: /^Rename/ })
      .press("Enter");
    await expect(form(page, "New name").getByLabel("Name")).toBeFocused();
    await page.keyboard.press("Escape");
    await expect(card(page, "Diplexer bedroom 1")).toBeFocused();

    await page.keyboard.press("ContextMenu");
    await menu(page)
      .getByRole("menuitem", { name: /^Duplicate/ })
      .press("Enter");
    await expect(card(page, "Diplexer bedroom 1 2").or(card(page, "Diplexer bedroom 2"))).toBeFocused();
    await page.keyboard.press("ContextMenu");
    await menu(page)
      .getByRole("menuitem", { name: /^Delete/ })
      .press("Enter");
    await expect(page.locator(".canvas :focus, .canvas:focus")).toHaveCount(1);

    await wire(page, "Dish", "LNB").focus();
    await page.keyboard.press("ContextMenu");
    await expect(heading).toHaveText("Wire from “Dish” to “LNB”");
    await close();
    await expect(wire(page, "Dish", "LNB")).toBeFocused();
    await page.keyboard.press("Escape");
    await canvas(page).focus();
    await page.keyboard.press("ContextMenu");
    await expect(heading).toHaveText("Canvas");
    await close();
    await expect(canvas(page)).toBeFocused();
  });
});

test("parts go from window to window, again and again, and cover nothing", async ({ context, baseURL }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"], {
    origin: new URL(baseURL ?? "").origin,
  });
  const first = await context.newPage();
  await open(first, HOUSE);
  const second = await context.newPage();
  await open(second, "/?example=house-wideband-fails");
  const before = await download(second);
  await first.bringToFront();
  await card(first, "UHF aerial").click({ position: { x: 60, y: 12 } });
  await card(first, "Loft amplifier").click({ modifiers: ["Shift"], position: { x: 60, y: 12 } });
  await first.keyboard.press("ControlOrMeta+c");
  await expect(messages(first)).toContainText("Copied 2 parts.");

  await second.bringToFront();
  await canvas(second).focus();
  for (const times of [1, 2, 3]) {
    await second.keyboard.press("ControlOrMeta+v");
    // One wire leads from the aerial to the amplifier.
    await expect
      .poll(async () => (await download(second)).file.parts.length)
      .toBe(before.file.parts.length + 2 * times);
    await expect(second.getByRole("toolbar", { name: "Selection" })).toContainText("2 parts");
  }
  const { file } = await download(second);
  expect(file.wires).toHaveLength(before.file.wires.length + 3);
  await expectApart(second);

  // Back in its own window the copy is fed by the next free output like that of its original.
  await first.bringToFront();
  await card(first, "UHF aerial").click({ position: { x: 60, y: 12 } });
  await first.keyboard.press("ControlOrMeta+c");
  await pasteByMenu(first);
  await expect(card(first, "UHF aerial 2")).toBeFocused();
  await expectApart(first);

  await first.evaluate(() => navigator.clipboard.writeText("Milk, bread"));
  await first.keyboard.press("ControlOrMeta+v");
  await expect(messages(first)).toContainText("The clipboard holds no parts to paste.");

  // As a browser does that does not let pages read the clipboard.
  await second.evaluate(() => {
    navigator.clipboard.readText = () => Promise.reject(new DOMException("", "NotAllowedError"));
  });
  await second.bringToFront();
  await pasteByMenu(second);
  await expect(messages(second)).toContainText("This browser does not let the menu read the clipboard.");
});

test("cards that are let go on others find room beside them", async ({ page }) => {
  await open(page, HOUSE);
  const start = await download(page);
  const lnb = await middle(card(page, "LNB"));
  await drag(page, nameOn(page, "FM aerial"), lnb);
  await expectApart(page);
  expect((await download(page)).file.wires).toEqual(start.file.wires);
  await undo(page).click();
  expect((await download(page)).text).toBe(start.text);
  await page.keyboard.press("Escape");

  await card(page, "FM aerial").click({ position: { x: 60, y: 12 } });
  await card(page, "DAB aerial").click({ modifiers: ["Shift"], position: { x: 60, y: 12 } });
  await drag(page, nameOn(page, "FM aerial"), { x: lnb.x, y: lnb.y + 20 });
  await expectApart(page);
  const moved = (await download(page)).file;
  const at = (file: typeof moved, label: string) => file.parts.find((p) => p.label === label)?.at ?? [];
  const apart = (file: typeof moved) => {
    const [x1 = 0, y1 = 0] = at(file, "FM aerial");
    const [x2 = 0, y2 = 0] = at(file, "DAB aerial");
    return [x2 - x1, y2 - y1];
  };
  expect(at(moved, "FM aerial")).not.toEqual(at(start.file, "FM aerial"));
  expect(apart(moved)).toEqual(apart(start.file));
  await undo(page).click();
  expect((await download(page)).text).toBe(start.text);

  // By keys a card goes past what stands in its way.
  await page.keyboard.press("Escape");
  await card(page, "FM aerial").click({ position: { x: 60, y: 12 } });
  for (let times = 0; times < 4; times += 1) await page.keyboard.press("ArrowUp");
  await expect
    .poll(async () => at((await download(page)).file, "FM aerial")[1])
    .toBeLessThan(at(start.file, "UHF aerial")[1] ?? 0);
  await expectApart(page);
});

/** Parts without a place to live in: they have no overview, so that one can go far away from them. */
const FAR_APART = {
  format: "downlead",
  version: 1,
  title: "Far apart",
  parts: [
    { id: "dish1", kind: "dish", label: "Dish", options: {}, at: [0, 0] },
    { id: "lnb1", kind: "lnb-universal", label: "LNB", options: {}, at: [400, 0] },
    { id: "aerial1", kind: "aerial-uhf", label: "Aerial", options: {}, at: [0, 320] },
  ],
  wires: [],
} as const;

type Hand = {
  readonly down: (at: Point) => Promise<void>;
  readonly move: (at: Point) => Promise<void>;
  readonly up: () => Promise<void>;
};
type Point = { readonly x: number; readonly y: number };

/** A finger, as the browser hears it: the driver itself can only tap. */
async function finger(page: Page): Promise<Hand> {
  const session = await page.context().newCDPSession(page);
  const send = async (type: "touchStart" | "touchMove" | "touchEnd", touchPoints: Point[]) => {
    await session.send("Input.dispatchTouchEvent", { type, touchPoints });
  };
  return {
    down: (at) => send("touchStart", [at]),
    move: (at) => send("touchMove", [at]),
    up: () => send("touchEnd", []),
  };
}

const mouse = (page: Page): Hand => ({
  down: async ({ x, y }) => {
    await page.mouse.move(x, y);
    await page.mouse.down();
  },
  move: ({ x, y }) => page.mouse.move(x, y),
  up: () => page.mouse.up(),
});

async function pull(hand: Hand, from: Point, to: Point): Promise<void> {
  await hand.down(from);
  for (const share of [0.2, 0.5, 0.8, 1]) {
    await hand.move({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
  }
}

const zoomOf = (page: Page): Promise<number> =>
  page.locator(".react-flow__viewport").evaluate((e) => new DOMMatrix(getComputedStyle(e).transform).a);

/** Where a place on the canvas lies in the window. */
async function onScreen(page: Page, [x, y]: readonly [number, number]): Promise<Point> {
  return page.locator(".react-flow__viewport").evaluate(
    (e, at) => {
      const { x, y } = new DOMPoint(at.x, at.y).matrixTransform(new DOMMatrix(getComputedStyle(e).transform));
      const { left, top } = (e.closest(".react-flow") ?? e).getBoundingClientRect();
      return { x: left + x, y: top + y };
    },
    { x, y },
  );
}

/** A wire from the dish to the input of the LNB, then from the aerial to the middle of the LNB, which has no place for it. */
async function pullFromAfar(page: Page, hand: Hand, reachPx: number): Promise<void> {
  await upload(page, "far.json", JSON.stringify(FAR_APART));
  await expect(titleOf(page)).toHaveValue("Far apart");
  // Cards are 144 wide, and the port of each of these lies 68 below its top.
  const out = { x: 144, y: 68 };
  for (const zoom of [0.62, 0.4]) {
    while ((await zoomOf(page)) > zoom) {
      const before = await zoomOf(page);
      await page.getByRole("button", { name: "Zoom out" }).click();
      await expect.poll(() => zoomOf(page)).toBeCloseTo(before / 1.3, 2);
    }
    const from = await onScreen(page, [out.x, out.y]);
    const port = await onScreen(page, [400, 68]);
    await pull(hand, from, { x: port.x - reachPx, y: port.y });
    await expect(
      page.locator(".join-line[data-status=valid], .join-layer .port-near").first(),
    ).toBeAttached();
    await hand.up();
    await expect
      .poll(async () => (await download(page)).file.wires)
      .toEqual([{ from: ["dish1", "sky"], to: ["lnb1", "sky"] }]);
    await undo(page).click();
    const lnb = await onScreen(page, [472, 20]);
    await pull(hand, from, lnb);
    await expect(page.locator(".join-card")).toHaveAttribute("data-status", "valid");
    await hand.up();
    await expect.poll(async () => (await download(page)).file.wires).toHaveLength(1);
    await undo(page).click();
    await expect.poll(async () => (await download(page)).file.wires).toHaveLength(0);
  }
}

test("wires are pulled from far away by the mouse, and the port nearby grows", async ({ page }) => {
  await open(page, HOUSE);
  await pullFromAfar(page, mouse(page), 9);
  const at = await onScreen(page, [144, 68]);
  await page.mouse.move(at.x + 6, at.y + 4);
  await expect(page.locator(".port-near")).toBeAttached();
  const { width } = (await page.locator(".port-near").boundingBox()) ?? { width: 0 };
  // The dot of a port is 9 px at full size.
  expect(width).toBeGreaterThan(9);
});

test.describe("by touch", () => {
  test.use({ hasTouch: true, isMobile: true, viewport: { width: 820, height: 1180 } });

  test("a long press opens the menu, two taps a form, and a wire is pulled from far away", async ({
    page,
  }) => {
    await open(page, HOUSE);
    const hand = await finger(page);
    const hold = async (at: Point, heading: string) => {
      await hand.down(at);
      await expect(menu(page).locator(".menu-heading")).toHaveText(heading);
      await hand.up();
      await page.waitForTimeout(100);
      // Taking the finger away is no tap on what lies under it.
      await expect(menu(page).locator(".menu-heading")).toHaveText(heading);
      await page.keyboard.press("Escape");
      await expect(menu(page)).toHaveCount(0);
    };
    await hold(await middle(await stripOf(page, "LNB", "Diplexer living room")), "“LNB”");
    await expect(card(page, "LNB")).toBeFocused();
    await hold(await middle(card(page, DROP)), `“${DROP}”`);
    await hold({ x: 300, y: 120 }, "Canvas");

    const twice = async (at: Point) => {
      await page.touchscreen.tap(at.x, at.y);
      await page.touchscreen.tap(at.x, at.y);
    };
    await twice(await middle(nameOn(page, "LNB")));
    await expect(form(page, "New name").getByLabel("Name")).toBeFocused();
    await page.keyboard.press("Escape");
    await expect(form(page, "New name")).toHaveCount(0);
    await twice(await middle(card(page, DROP)));
    await expect(form(page, "Length and grade")).toBeVisible();
    await page.keyboard.press("Escape");

    await pullFromAfar(page, hand, 18);
  });
});

test("values of several parts are set at once, and keys go on from card, pane and verdict", async ({
  page,
}) => {
  await open(page, HOUSE);
  await card(page, DROP).click();
  await page.keyboard.press("Alt+Enter");
  await expect(page.locator(".inspector").getByRole("spinbutton", { name: "Length" })).toBeFocused();
  await page.keyboard.press("Shift+F6");
  await expect(card(page, DROP)).toBeFocused();

  // By the Tab key alone: a stop right after the selected card, seen and as large as can be hit (WCAG 2.2, 2.5.8).
  const first = page.locator(".inspector").getByRole("spinbutton", { name: "Length" });
  const stop = canvas(page).getByRole("button", { name: "Edit values" });
  await expect(stop).toHaveCount(1);
  await page.keyboard.press("Tab");
  await expect(stop).toBeFocused();
  await expect(stop).toContainText("Alt+Enter");
  expect((await stop.boundingBox())?.height).toBeGreaterThanOrEqual(24);
  await page.keyboard.press("Enter");
  await expect(first).toBeFocused();
  await page.keyboard.press("Shift+Tab");
  await expect(card(page, DROP)).toBeFocused();
  await page.keyboard.press("Alt+Enter");
  await expect(first).toBeFocused();
  await page.keyboard.type("44");
  await page.keyboard.press("Escape");
  await expect(first).toHaveValue("16");
  await expect(first).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(card(page, DROP)).toBeFocused();

  await card(page, "Drop bedroom 1").click({ modifiers: ["Shift"] });
  await page.keyboard.press("Alt+Enter");
  const length = page
    .getByRole("region", { name: "Values of all of them" })
    .getByRole("spinbutton", { name: "Length" });
  await expect(length).toBeFocused();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("21");
  await page.keyboard.press("Enter");
  await expect(card(page, DROP)).toContainText("21 m");
  await expect(card(page, "Drop bedroom 1")).toContainText("21 m");
  await undo(page).click();
  await expect(card(page, DROP)).toContainText("16 m");
  await expect(card(page, "Drop bedroom 1")).toContainText("12 m");
  await expect(undo(page)).toBeDisabled();

  await showPane(page, "Verdict");
  await verdict(page, "TV bedroom 1").click();
  await page.keyboard.press("F2");
  await expect(form(page, "New name")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(card(page, "TV bedroom 1")).toBeFocused();
});

test("a deleted design is taken back by its notice, also after another dialog, and is there once", async ({
  page,
}) => {
  await ownDesign(page, "Kept");
  const kept = await download(page);
  await fromMenu(page, "New design");
  await expect(cards(page)).toHaveCount(0);
  await fromMenu(page, "Designs and examples…");
  const list = form(page, "Designs");
  await list.getByRole("button", { name: "Delete “Kept”" }).click();
  await page.keyboard.press("Escape");
  await expect(list).toHaveCount(0);
  await page.getByRole("button", { name: "Help" }).click();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await messages(page).getByRole("button", { name: "Undo" }).click();
  await expect(messages(page).getByText("Deleted “Kept”.")).toHaveCount(0);

  await fromMenu(page, "Designs and examples…");
  // It is there once, and as it was.
  await expect(list.getByRole("button", { name: "Rename “Kept”" })).toHaveCount(1);
  await list.getByRole("button", { name: /^Kept / }).click();
  await expect(titleOf(page)).toHaveValue("Kept");
  expect((await download(page)).text).toBe(kept.text);

  // The open one, changed after its deletion: still one design, with the change in it.
  await fromMenu(page, "Designs and examples…");
  await list.getByRole("button", { name: "Delete “Kept”" }).click();
  await page.keyboard.press("Escape");
  await card(page, "LNB").click({ position: { x: 60, y: 12 } });
  await page.locator(".inspector").getByRole("combobox", { name: "Outputs" }).selectOption("1 (single)");
  await waitUntilSaved(page);
  await messages(page)
    .locator(".notice", { hasText: "Deleted “Kept”." })
    .getByRole("button", { name: "Undo" })
    .click();
  await fromMenu(page, "Designs and examples…");
  await expect(list.getByRole("button", { name: "Rename “Kept”" })).toHaveCount(1);
  await page.keyboard.press("Escape");

  // A wire has fallen away, which the notice takes back, but only as long as it is the last change.
  const lost = messages(page).locator(".notice", { hasText: "wire" });
  await expect(lost.getByRole("button", { name: "Undo" })).toBeVisible();
  await card(page, "LNB").press("ArrowLeft");
  await expect(lost.getByRole("button", { name: "Undo" })).toHaveCount(0);
});

test.describe("with less motion", () => {
  test.use({ contextOptions: { reducedMotion: "reduce" } });

  test("the view is where it goes at once", async ({ page }) => {
    await open(page, HOUSE);
    const fitted = await zoomOf(page);
    await page.getByRole("button", { name: "Zoom in" }).click();
    // A glide would have come as far as its first frame.
    const { near, fit } = await page.evaluate(async () => {
      const zoom = () => {
        const view = document.querySelector(".react-flow__viewport");
        return view ? new DOMMatrix(getComputedStyle(view).transform).a : Number.NaN;
      };
      const frame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      const near = zoom();
      document.querySelector<HTMLElement>("button[aria-label='Show everything']")?.click();
      await frame();
      return { near, fit: zoom() };
    });
    expect(near).toBeCloseTo(fitted * 1.3, 3);
    expect(fit).toBeCloseTo(fitted, 3);
    await expect(wires(page).first()).toBeAttached();
    const moving = await page.evaluate(
      () =>
        [...document.querySelectorAll(".canvas, .canvas *")].filter((element) => {
          const { transitionDuration, animationName } = getComputedStyle(element);
          return (
            animationName !== "none" ||
            transitionDuration.split(", ").some((time) => Number.parseFloat(time) > 0)
          );
        }).length,
    );
    expect(moving).toBe(0);
  });
});
