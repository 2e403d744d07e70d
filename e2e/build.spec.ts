/** A small house from an empty canvas: with the mouse, with the keyboard alone, and with a finger. */
import type { Page } from "@playwright/test";
import {
  cards,
  download,
  drag,
  fromMenu,
  middle,
  onWire,
  open,
  port,
  showPane,
  titleOf,
  wire,
} from "./app.ts";
import { expect, test } from "./test.ts";

/** Dish, converter, cable, outlet, receiver, each joined to the next. */
const CHAIN = ["dish", "lnb-universal", "cable", "outlet-sat", "receiver-sat"];

const [DISH, LNB, OUTLET, RECEIVER] = [
  "Dish 1",
  "Universal LNB 1",
  "Outlet, satellite 1",
  "Satellite receiver 1",
];

async function expectChain(page: Page): Promise<void> {
  const { file } = await download(page);
  expect(file.parts.map((p) => p.kind).sort()).toEqual([...CHAIN].sort());
  const kind = (id: string) => file.parts.find((p) => p.id === id)?.kind ?? id;
  const joints = file.wires.map((w) => [kind(w.from[0]), kind(w.to[0])]);
  expect(joints).toHaveLength(CHAIN.length - 1);
  for (const [i, next] of CHAIN.slice(1).entries()) expect(joints).toContainEqual([CHAIN[i], next]);
}

test("a house is built from an empty canvas with the mouse", async ({ page }) => {
  await open(page, "/");
  await fromMenu(page, "New design");
  await expect(cards(page)).toHaveCount(0);
  await expect(page.getByText("Nothing here yet").first()).toBeVisible();
  for (let i = 0; i < 2; i++) await page.getByRole("button", { name: "Zoom out" }).click();

  const tray = (name: string) => page.getByRole("button", { name, exact: true });
  await page.getByRole("button", { name: "All parts" }).click();
  await drag(page, tray("Dish"), { x: 310, y: 400 });
  await drag(page, tray("Universal LNB"), { x: 520, y: 400 });
  await page.getByRole("searchbox", { name: "Search the parts" }).fill("satellite");
  await drag(page, tray("Outlet, satellite"), { x: 740, y: 400 });
  await drag(page, tray("Satellite receiver"), { x: 960, y: 400 });
  await expect(cards(page)).toHaveCount(4);

  // From port to port, against the signal too, and from port to card.
  await drag(page, port(page, DISH, "Output feed"), await middle(port(page, LNB, "Input feed")));
  await drag(page, port(page, OUTLET, "Input in"), await middle(port(page, LNB, "Output out")));
  await drag(page, port(page, OUTLET, "Output SAT"), { x: 960, y: 400 });
  await showPane(page, "Verdict");
  await expect(page.getByText("The receiver works.", { exact: true }).first()).toBeVisible();

  // Let go over a wire, a part goes into it.
  await page.getByRole("button", { name: "All parts" }).click();
  await page.getByRole("searchbox", { name: "Search the parts" }).fill("cable");
  await drag(page, tray("Cable"), await onWire(page, LNB, OUTLET));
  await expect(wire(page, LNB, OUTLET)).toHaveCount(0);
  await expectChain(page);
  await showPane(page, "Verdict");
  await expect(page.getByText("The receiver works.", { exact: true }).first()).toBeVisible();
});

test("the same house is built with the keyboard alone", async ({ page }) => {
  await open(page, "/");
  await tabTo(page, "button", "Design menu");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Enter");
  await expect(titleOf(page)).toHaveValue("Untitled design");

  await tabTo(page, "button", "All parts");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("searchbox", { name: "Search the parts" })).toBeFocused();
  for (const kind of ["dish", "universal lnb", "outlet, satellite", "satellite receiver"]) {
    await page.keyboard.press("ControlOrMeta+a");
    await page.keyboard.type(kind);
    await page.keyboard.press("Enter");
  }
  await expect(cards(page)).toHaveCount(4);

  for (const [from, to] of [
    [`${DISH}: output`, LNB],
    [`${LNB}: output`, OUTLET],
    [`${OUTLET}: output`, RECEIVER],
  ]) {
    await tabTo(page, "button", "Connect two parts…");
    await page.keyboard.press("Enter");
    await page.keyboard.type(String(from));
    await page.keyboard.press("Enter");
    await expect(page.getByRole("dialog", { name: /^Connect .* to…/ })).toBeVisible();
    await page.keyboard.type(String(to));
    await page.keyboard.press("Enter");
    await expect(page.getByRole("dialog")).toHaveCount(0);
  }
  await tabTo(page, "tab", "Part");
  await page.keyboard.press("ArrowLeft");
  await expect(page.getByText("The receiver works.", { exact: true }).first()).toBeVisible();

  // A wire takes the focus like a card does; Enter selects it, and I asks what to put into it.
  await tabToWire(page, `From ${LNB} to ${OUTLET}`);
  await page.keyboard.press("Enter");
  await page.keyboard.press("i");
  await expect(page.getByRole("dialog", { name: "Insert into this wire" })).toBeVisible();
  await page.keyboard.type("cable");
  await page.keyboard.press("Enter");
  await expectChain(page);
});

/** Presses Tab until the wanted control has the focus: reaching it by keyboard is part of what is tested. */
async function tabTo(page: Page, role: "button" | "searchbox" | "tab", name: string): Promise<void> {
  await tabUntil(page, () =>
    page.getByRole(role, { name }).evaluate((element) => element === document.activeElement),
  );
}

async function tabToWire(page: Page, start: string): Promise<void> {
  await tabUntil(page, () =>
    page.evaluate((words) => {
      const { activeElement } = document;
      const named = activeElement?.getAttribute("aria-labelledby");
      return (named && document.getElementById(named)?.textContent?.startsWith(words)) || false;
    }, start),
  );
}

async function tabUntil(page: Page, arrived: () => Promise<boolean>): Promise<void> {
  for (let i = 0; i < 160; i++) {
    if (await arrived()) return;
    await page.keyboard.press("Tab");
  }
  throw new Error("Not to be reached with the Tab key.");
}

test.describe("on a tablet", () => {
  test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });

  test("the same house is built with a finger: a tap adds, two taps join", async ({ page }) => {
    await open(page, "/");
    await page.getByRole("button", { name: "Design menu" }).tap();
    await page.getByRole("menuitem", { name: "New design" }).tap();
    await expect(cards(page)).toHaveCount(0);

    const bottom = page.getByRole("navigation", { name: "Panes" });
    await bottom.getByRole("button", { name: "Parts" }).tap();
    const tray = page.getByRole("region", { name: "Parts" });
    for (const kind of ["Dish", "Universal LNB", "Outlet, satellite", "Satellite receiver"]) {
      await tray.getByRole("button", { name: kind, exact: true }).tap();
    }
    await bottom.getByRole("button", { name: "Parts" }).tap();
    await expect(tray).toHaveCount(0);
    await page.getByRole("button", { name: "Show everything" }).tap();
    await expect(cards(page)).toHaveCount(4);

    await port(page, DISH, "Output feed").tap();
    await expect(page.getByText(/^Connecting “Dish 1”/).first()).toBeVisible();
    await port(page, LNB, "Input feed").tap();
    await port(page, LNB, "Output out").tap();
    await port(page, OUTLET, "Input in").tap();
    await port(page, OUTLET, "Output SAT").tap();
    await port(page, RECEIVER, "Input \\w+").tap();
    await expect(page.getByText(/^Connecting/)).toHaveCount(0);

    const strip = await onWire(page, LNB, OUTLET);
    await page.touchscreen.tap(strip.x, strip.y);
    await page.getByRole("button", { name: "Insert a part…" }).tap();
    await page.getByRole("option", { name: /^Cable/ }).tap();
    await expectChain(page);
    await bottom.getByRole("button", { name: "Verdict" }).tap();
    await expect(page.getByText("The receiver works.", { exact: true }).first()).toBeVisible();
  });

  test("a part is dragged out of the tray with a finger, and a card to another place", async ({ page }) => {
    await open(page, "/");
    await fromMenu(page, "New design");
    await page.getByRole("navigation", { name: "Panes" }).getByRole("button", { name: "Parts" }).tap();
    const item = await middle(
      page.getByRole("region", { name: "Parts" }).getByRole("button", { name: "Dish", exact: true }),
    );
    await swipe(page, item, { x: 300, y: 300 }, 400);
    await expect(cards(page)).toHaveCount(1);
    const at = await middle(cards(page));
    expect(Math.hypot(at.x - 300, at.y - 300)).toBeLessThan(20);
    await swipe(page, at, { x: 500, y: 400 }, 0);
    const moved = await middle(cards(page));
    expect(Math.hypot(moved.x - 500, moved.y - 400)).toBeLessThan(30);
  });
});

type Point = { readonly x: number; readonly y: number };

/** A finger that rests for a moment [ms], moves and lifts. */
async function swipe(page: Page, from: Point, to: Point, restMs: number): Promise<void> {
  const fingers = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", at: Point | null) =>
    fingers.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [at] : [] });
  await touch("touchStart", from);
  await page.waitForTimeout(restMs);
  for (let i = 1; i <= 20; i++) {
    const along = (a: number, b: number) => a + ((b - a) * i) / 20;
    await touch("touchMove", { x: along(from.x, to.x), y: along(from.y, to.y) });
    await page.waitForTimeout(20);
  }
  await touch("touchEnd", null);
  await fingers.detach();
}
