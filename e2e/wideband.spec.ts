/** What the first command of the README leads to: a house that works, broken and mended by one part. */
import { readFileSync } from "node:fs";
import { card, findings, messages, open, showAll, showPane, stripOf, verdict, wire, wires } from "./app.ts";
import { expect, test } from "./test.ts";

const example = new URL("../src/design/examples/house-universal.json", import.meta.url);
type Wires = readonly { readonly from: readonly [string, string] }[];
const { wires: drawn }: { readonly wires: Wires } = JSON.parse(readFileSync(example, "utf8"));
/** Parts that a wire leaves with a strip: the outputs of the amplifier are alike and share one, cables have none. */
const strips = new Set(
  drawn
    .filter(({ from: [part] }) => !part.startsWith("drop"))
    .map(({ from }) => (from[0] === "amp" ? "amp" : from.join("."))),
);

test("the first address shows the example house with a strip on every wire", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await expect(page).toHaveTitle(/Downlead/);
  await showAll(page);
  await expect(wires(page)).toHaveCount(drawn.length);
  // Nothing in this house is without a signal.
  const live = page.locator(".docked-strip .strip:has(path.strip-live)");
  await expect(live).toHaveCount(strips.size);
  // A run of cable shows what is on its wire under the pointer.
  await expect(page.locator(".open-strip")).toHaveCount(0);
  await card(page, "Drop living room").hover();
  await expect(page.locator(".open-strip path.strip-live").first()).toBeVisible();
  await expect(page.locator(".strip-hit")).toHaveCount(0);
  await expect(page.getByText("All 7 receivers work.", { exact: true }).first()).toBeVisible();
});

/**
 * A wideband converter with its oscillator at 10.4 GHz puts the sky from 10.7 to 12.75 GHz to 300 to 2350 MHz,
 * over television at 470 to 694 MHz (channels 21 to 48: EU Decision 2017/899, from memory) and clear of DAB and
 * FM below 240 MHz. It offers V and H on one output each, and a universal receiver can tune neither: common
 * practice, no source.
 */
test("a wideband converter in place of the universal one collides with television where they share a cable, and undo brings all back", async ({
  page,
}) => {
  await open(page, "/?example=house-universal");
  await card(page, "LNB").click();
  await page.getByRole("button", { name: "Replace with…" }).click();
  await page.getByRole("combobox", { name: "Replace with" }).fill("wideband lnb");
  await page.keyboard.press("Enter");
  await expect(card(page, "LNB")).toContainText("oscillator 10.4 GHz");
  await expect(messages(page)).not.toContainText("taken off");

  // Red and hatched on the two cables that carry both, in words as well; none where there is television alone.
  await showAll(page);
  for (const room of ["living room", "bedroom 1"]) {
    const shared = wire(page, `Diplexer ${room}`, `Drop ${room}`);
    await expect(shared).toHaveAccessibleName(/TV [^,]*carriers are lost/);
    const strip = await stripOf(page, `Diplexer ${room}`, `Drop ${room}`);
    await expect(strip).toHaveAttribute("data-worst", "hit");
    await expect(strip.locator(".strip-hit").first()).toHaveCSS("fill", /url\("#hatch-hit"\)/);
    await expect(strip.locator(".strip-lost").first()).toBeVisible();
  }
  for (const room of ["bedroom 2", "bedroom 3"]) {
    const alone = card(page, `Outlet ${room}`);
    await expect(alone.locator(".strip-live").first()).toBeVisible();
    await expect(alone.locator(".strip-hit")).toHaveCount(0);
  }

  await showPane(page, "Verdict");
  await expect(page.getByText("3 of 7 receivers work.", { exact: true }).first()).toBeVisible();
  await expect(verdict(page, "TV living room")).toHaveText(
    /Fails: .* lost to what else is on the same frequencies/,
  );
  await expect(verdict(page, "TV bedroom 1")).toHaveText(
    /Fails: .* lost to what else is on the same frequencies/,
  );
  await expect(verdict(page, "TV bedroom 2")).toHaveText(/Works: /);
  await expect(verdict(page, "TV bedroom 3")).toHaveText(/Works: /);
  await expect(verdict(page, "DAB radio living room")).toHaveText(/Works: /);
  await expect(verdict(page, "Satellite receiver living room")).toHaveText(
    /Fails: .*Gets none of 80 .*come out of output H of “LNB”, not out of V/,
  );
  await expect(verdict(page, "Satellite receiver bedroom 1")).toHaveText(
    /Fails: .*Gets none of 80 .*come out of output V of “LNB”, not out of H/,
  );
  await expect(findings(page)).toContainText(
    "gives a wideband feed, which “Satellite receiver living room” cannot tune",
  );
  await expect(findings(page)).toContainText(/“UHF aerial” and Satellite V from “Dish” share \d+ to \d+ MHz/);

  await page.getByRole("button", { name: "Undo", exact: true }).first().click();
  await expect(page.getByText("All 7 receivers work.", { exact: true }).first()).toBeVisible();
  await expect(page.locator(".strip-hit")).toHaveCount(0);
  await expect(wire(page, "LNB", "Diplexer living room")).toHaveAccessibleName(/on request/);
  await page.getByRole("button", { name: "Redo" }).click();
  await expect(page.getByText("3 of 7 receivers work.", { exact: true }).first()).toBeVisible();
});

test("a finding leads to its culprit, and the spectrum of the wire names the carriers that are hit", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  const culprit = card(page, "Diplexer living room");
  await findings(page)
    .getByText(/Because of this: 4 receivers/)
    .click();
  await findings(page)
    .getByRole("button", {
      name: /^(?!Why|Find).*Satellite V from “Dish” share .* behind “Diplexer living room”/,
    })
    .first()
    .click();
  await expect(culprit).toBeInViewport({ ratio: 0.99 });
  await expect(culprit).toHaveClass(/selected/);

  // The card is selected already: a press on its strip goes on to the wire.
  await (await stripOf(page, "Diplexer living room", "Drop living room")).click();
  const spectrum = page.getByRole("region", { name: "Spectrum" });
  await expect(spectrum.getByText("Diplexer living room (out) → Drop living room (in)")).toBeVisible();
  const channels = spectrum
    .getByRole("region", { name: "Carriers" })
    .getByRole("row")
    .filter({ hasText: /^C\d+/ });
  await expect(channels.filter({ hasText: "Lost to another signal" })).not.toHaveCount(0);
  // UHF channel N is centred at 306 + 8 · N MHz (it agrees with public scan tables: C23 = 490, C26 = 514).
  for (const words of await channels.allInnerTexts()) {
    const [, channel, onAir] = /^C(\d+)\D+(\d+)/.exec(words) ?? [];
    expect(Number(onAir), words).toBe(306 + 8 * Number(channel));
  }

  // The arrow keys step from carrier to carrier, upwards in frequency, and each is read out.
  const plot = spectrum.getByRole("slider", { name: /^Spectrum/ });
  await plot.focus();
  let before = 0;
  for (let i = 0; i < 16; i++) {
    await page.keyboard.press("ArrowRight");
    const spoken = (await plot.getAttribute("aria-valuetext")) ?? "";
    const [, here] = /([\d.]+) MHz, -?[\d.]+ dBµV/.exec(spoken.replaceAll("\u202f", "")) ?? [];
    expect(Number(here), spoken).toBeGreaterThan(before);
    before = Number(here);
  }
  await expect(spectrum.locator(".readout")).toContainText("dBµV");
});
