/** One installation in several ways, and what each is judged by. */
import { card, download, findings, fromMenu, open, ownDesign, showPane } from "./app.ts";
import { expect, test } from "./test.ts";

/**
 * The plan with a wideband converter: it collides with television on the two shared cables, and universal receivers
 * cannot tune it (common practice, no source), so four of seven lose what they have.
 */
test("a variant is copied, changed and compared with what was built, which stays as it is", async ({
  page,
}) => {
  await ownDesign(page, "House with a plan");
  await fromMenu(page, "Variants…");
  const variants = page.getByRole("dialog", { name: /Variants/ });
  await variants.getByRole("textbox", { name: "Copy the active variant as" }).fill("Wideband");
  await variants.getByRole("button", { name: "Add" }).click();
  await expect(variants.getByRole("button", { name: /^Wideband active now/ })).toBeVisible();
  await variants.getByRole("button", { name: "Close" }).click();

  await card(page, "LNB").click();
  await page.getByRole("button", { name: "Replace with…" }).click();
  await page.getByRole("combobox", { name: "Replace with" }).fill("wideband lnb");
  await page.keyboard.press("Enter");
  await showPane(page, "Verdict");
  await expect(page.getByText("3 of 7 receivers work.", { exact: true }).first()).toBeVisible();

  await page.getByRole("button", { name: "Variant: Wideband" }).click();
  await page.getByRole("menuitem", { name: "Before and after…" }).click();
  const compared = page.getByRole("dialog", { name: /Before and after/ });
  await expect(compared.getByText(/all 7 receivers work · no error/)).toBeVisible();
  await expect(compared.getByText(/3 of 7 receivers work · \d+ errors?/)).toBeVisible();
  for (const label of ["TV living room", "TV bedroom 1", "Satellite receiver bedroom 1"])
    await expect(compared.getByRole("row", { name: new RegExp(`^${label}`) })).toContainText("loses");
  await expect(compared.getByRole("row", { name: /^TV bedroom 2/ })).toHaveCount(0);
  await expect(compared.getByRole("list").first()).toContainText("LNB");
  await compared.getByRole("button", { name: "Close" }).click();

  await page.getByRole("button", { name: "Variant: Wideband" }).click();
  await page.getByRole("menuitemradio").filter({ hasNotText: "Wideband" }).click();
  await expect(page.getByText("All 7 receivers work.", { exact: true }).first()).toBeVisible();
  await expect(card(page, "LNB")).not.toContainText("oscillator 10.40 GHz");
  await page.getByRole("banner").getByRole("button", { name: "Undo", exact: true }).click();
  await expect(page.getByRole("button", { name: "Variant: Wideband" })).toBeVisible();
  await expect(page.getByText("3 of 7 receivers work.", { exact: true }).first()).toBeVisible();
});

/**
 * 64 QAM at an outlet: C/N 26 dB (EN 60728-1, as quoted in a public table); MER 21 dB (Spanish Royal Decree 346/2011, Annex I 4.5),
 * which counts the other signal too.
 */
test("other limits change what is found at once, and one undo brings the former back", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  const weak = findings(page)
    .getByText(/5 of 6 TV channels have too little C\/N/)
    .first();
  await expect(weak).toContainText("should have 26 dB");
  await page.getByRole("button", { name: /^EN 60728-1, as quoted.*change$/ }).click();
  const dialog = page.getByRole("dialog", { name: /Limits/ });
  await dialog
    .getByRole("combobox", { name: "Limits at outlets" })
    .selectOption("Royal Decree 346/2011, Annex I");
  await dialog.getByRole("button", { name: "Close" }).click();
  await expect(
    findings(page)
      .getByText(/too little MER/)
      .first(),
  ).toContainText("should have 21 dB");
  expect((await download(page)).file).toMatchObject({ settings: { limits: "rd346" } });
  await page.getByRole("banner").getByRole("button", { name: "Undo", exact: true }).click();
  await expect(weak).toContainText("should have 26 dB");
});

test("all outlets are brought nearer to one level, looked at before it is done and undone in one step", async ({
  page,
}) => {
  await open(page, "/?example=house-universal");
  const before = await download(page);
  await fromMenu(page, "Balance outlets…");
  const dialog = page.getByRole("dialog", { name: "Balance outlets" });
  await dialog.getByRole("combobox", { name: "Service" }).selectOption("Terrestrial TV");
  await dialog.getByRole("textbox", { name: "Level at every outlet" }).fill("52");
  await dialog.getByRole("button", { name: "Balance" }).click();
  await expect(dialog.getByText(/^\d+ settings? tried$/)).toBeVisible({ timeout: 40_000 });

  // Every outlet comes nearer to the 52 dBµV that were asked for, none stays as it was.
  const outlets = dialog.getByRole("row", { name: /^Outlet (?:living|bedroom)/ });
  await expect(outlets).toHaveCount(4);
  for (const row of await outlets.all()) {
    const [was, is] = (await row.getByRole("cell").allInnerTexts()).map((text) => Number.parseFloat(text));
    expect(Math.abs(Number(is) - 52), await row.innerText()).toBeLessThan(Math.abs(Number(was) - 52));
  }

  await dialog.getByRole("button", { name: "Show on the canvas" }).click();
  const preview = page.getByRole("region", { name: "Preview" });
  await expect(preview).toContainText("Balance outlets");
  expect((await download(page)).text).toBe(before.text);
  await preview.getByRole("button", { name: "Apply" }).click();
  await expect(preview).toHaveCount(0);
  const after = await download(page);
  expect(after.file.parts).not.toEqual(before.file.parts);
  expect(after.file.wires).toEqual(before.file.wires);
  await expect(page.getByText("All 7 receivers work.", { exact: true }).first()).toBeVisible();
  await page.getByRole("banner").getByRole("button", { name: "Undo", exact: true }).click();
  expect((await download(page)).file.parts).toEqual(before.file.parts);
});
