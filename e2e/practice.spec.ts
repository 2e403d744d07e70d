/** Cases to practise on: with a meter, without a verdict, and without touching the present design. */
import type { Locator, Page } from "@playwright/test";
import { download, fromMenu, open, ownDesign, retitle, titleOf, waitUntilSaved } from "./app.ts";
import { expect, test, watch } from "./test.ts";

test.use({ permissions: ["clipboard-read", "clipboard-write"] });

const meter = (page: Page): Locator => page.getByRole("region", { name: "Meter" });
const story = (page: Page): Locator => page.locator(".story");

async function practice(page: Page): Promise<Locator> {
  await fromMenu(page, "Practice…");
  return page.getByRole("dialog", { name: /Practice/ });
}

/** Hangs the meter somewhere and reads it. */
async function measure(page: Page, where: string): Promise<string> {
  const places = meter(page).getByRole("combobox", { name: /^Connected to/ });
  await places.selectOption(where);
  await meter(page).getByRole("button", { name: "Measure" }).click();
  return meter(page).locator(".meter-value").innerText();
}

/**
 * A plug that is off lets no signal through: what stands before it is there, what should stand behind it is not.
 */
test("a case is opened, measured, named and solved, and stays solved", async ({ page }) => {
  await ownDesign(page, "Mine");
  const before = await download(page);
  const list = await practice(page);
  await expect(list.getByText(/^0 of \d+ solved$/)).toBeVisible();
  await list.getByRole("button", { name: /^Begin ?: No picture in the lounge$/ }).click();
  await expect(page.getByRole("heading", { level: 1, name: "No picture in the lounge" })).toBeFocused();
  await expect(story(page)).toContainText("the kitchen is fine");
  // Nothing on the plan tells what the meter is for.
  await expect(page.locator(".practice .strip")).toHaveCount(0);
  await expect(page.locator(".practice .node-card-state")).toHaveCount(0);

  expect(await measure(page, "out 1 output of “Splitter”")).toMatch(/\d+.*dBµV/);
  const outputs = page.getByRole("group", { name: "Which end of the wire" });
  await outputs.getByRole("radio").nth(1).check({ force: true });
  await meter(page).getByRole("button", { name: "Measure" }).click();
  await expect(meter(page).locator(".meter-value")).toHaveText(/nothing|no signal/i);
  await expect(page.getByText("2 measurements").first()).toBeVisible();

  // First a wrong suspicion, which costs, then the right one.
  const suspicion = page.getByRole("region", { name: "Name the fault" });
  const name = async (part: string, fault: string) => {
    await suspicion.getByRole("combobox", { name: /^The part/ }).selectOption(part);
    await suspicion.getByRole("combobox", { name: "What is wrong there" }).selectOption(fault);
    await suspicion.getByRole("button", { name: "Submit" }).click();
  };
  await name("Masthead amplifier", "a plug is off");
  await expect(suspicion.getByText("Not it")).toBeVisible();
  await name("Splitter", "a plug is off");
  const outcome = page.getByRole("region", { name: "Outcome" });
  // Level behind the splitter had excluded the plug above it: 20 points, and what the readings left open.
  await expect(outcome.getByRole("status")).toHaveText(/^Right\. \d+ points$/);
  const points = Number(/\d+/.exec(await outcome.getByRole("status").innerText())?.[0]);
  expect(points).toBeGreaterThan(40);
  expect(points).toBeLessThanOrEqual(80);
  await expect(page.locator(".node-card-mark")).toHaveText("Here it was");

  await page.getByRole("button", { name: "Leave" }).click();
  await expect(titleOf(page)).toHaveValue("Mine");
  expect((await download(page)).text).toBe(before.text);
  await page.reload();
  await expect((await practice(page)).getByText(`Solved, ${points} points`)).toBeVisible();
});

test("the link of a random case opens the same case elsewhere and leaves the design there alone", async ({
  page,
  browser,
  baseURL,
}) => {
  await ownDesign(page, "House of the teacher");
  const list = await practice(page);
  await list.getByRole("textbox", { name: "Seed" }).fill("8");
  await list.getByRole("button", { name: "Begin", exact: true }).click();
  const told = await story(page).innerText();
  await page.getByRole("button", { name: "Copy link" }).click();
  await expect(page.getByRole("button", { name: "Copied" })).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());

  const other = await browser.newContext();
  const complaints = await watch(other, baseURL);
  const theirs = await other.newPage();
  await open(theirs, "/?example=long-steel-drop");
  await retitle(theirs, "Of the trainee");
  await waitUntilSaved(theirs);
  const before = await download(theirs);
  await theirs.goto("about:blank");
  await theirs.goto(link);
  await expect(story(theirs)).toHaveText(told);
  await expect(theirs.getByRole("heading", { level: 1, name: "Random case 8" })).toBeVisible();
  // The same fault, not only the same words: both are shown what it is.
  const faults = [];
  for (const each of [page, theirs]) {
    await each.getByRole("button", { name: "Give up" }).click();
    await each.getByRole("button", { name: "Show the fault, without points" }).click();
    const outcome = each.getByRole("region", { name: "Outcome" });
    await expect(outcome.getByRole("status")).toHaveText("This is the fault");
    faults.push(await outcome.locator("strong").first().innerText());
  }
  expect(faults[0]).toBe(faults[1]);

  await theirs.getByRole("button", { name: "Leave" }).click();
  await expect(titleOf(theirs)).toHaveValue("Of the trainee");
  expect((await download(theirs)).text).toBe(before.text);
  await fromMenu(theirs, "Designs and examples…");
  await expect(
    theirs.getByRole("dialog", { name: "Designs" }).getByRole("button", { name: /^Rename “/ }),
  ).toHaveCount(1);
  expect(complaints).toEqual([]);
  await other.close();
});

test("a link to a case that does not exist is said so, and a design is one step away", async ({ page }) => {
  await page.goto("/#t1.no-such-case");
  const said = page.getByRole("alertdialog", { name: "The practice case did not open" });
  await expect(said).toContainText("There is no practice case “no-such-case”.");
  await said.getByRole("button", { name: "Open what was open last" }).click();
  await expect(titleOf(page)).not.toHaveValue("");
  await expect(page.locator(".react-flow__node").first()).toBeVisible();
});
