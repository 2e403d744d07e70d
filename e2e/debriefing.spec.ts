/** The debriefing of a practice case: what the best way would have been, and that a guess is not worth full points. */
import type { Page } from "@playwright/test";
import { fromMenu, open } from "./app.ts";
import { expect, test } from "./test.ts";

const outcome = (page: Page) => page.getByRole("region", { name: "Outcome" });

async function begin(page: Page): Promise<void> {
  await open(page, "/?example=house-universal");
  await fromMenu(page, "Practice…");
  await page.getByRole("button", { name: /^Begin ?: No picture in the lounge$/ }).click();
}

async function name(page: Page, part: string, fault: string): Promise<void> {
  const form = page.getByRole("region", { name: "Name the fault" });
  await form.getByRole("combobox", { name: /^The part/ }).selectOption(part);
  await form.getByRole("combobox", { name: "What is wrong there" }).selectOption(fault);
  await form.getByRole("button", { name: "Submit" }).click();
}

async function points(page: Page): Promise<number> {
  const status = outcome(page).getByRole("status");
  await expect(status).toHaveText(/^Right\. \d+ points?$/);
  return Number(/\d+/.exec(await status.innerText())?.[0]);
}

/** A reading at both ends of the plug that is off shows signal before it and none behind it: that proves it. */
test("a guess scores less than the same answer with readings, and the debriefing shows the best way", async ({
  page,
}) => {
  await begin(page);
  await name(page, "Splitter", "a plug is off");
  const guessed = await points(page);
  expect(guessed).toBeLessThan(100);
  const way = outcome(page)
    .getByRole("group")
    .filter({ hasText: /^The best way \(\d+ measurements?\)/ });
  await expect(way).toBeVisible({ timeout: 40_000 });
  await way.getByText(/^The best way/).click();
  const steps = way.getByRole("list").first().locator("> li");
  const told = Number(/\((\d+) measurement/.exec(await way.innerText())?.[1]);
  await expect(steps).toHaveCount(told);
  // Several faults explain what the customer notices; each step excludes some, and says what each reading would have.
  const suspects = Number(
    /(\d+) faults? would explain what the customer notices/.exec(await way.innerText())?.[1],
  );
  expect(suspects).toBeGreaterThan(1);
  await expect(steps.first()).toContainText(new RegExp(`excludes \\d+ of ${suspects}`));

  await outcome(page).getByRole("button", { name: "Work on it again" }).click();
  const meter = page.getByRole("region", { name: "Meter" });
  await meter.getByRole("combobox", { name: /^Connected to/ }).selectOption("out 1 output of “Splitter”");
  await meter.getByRole("button", { name: "Measure" }).click();
  await page
    .getByRole("group", { name: "Which end of the wire" })
    .getByRole("radio")
    .nth(1)
    .check({ force: true });
  await meter.getByRole("button", { name: "Measure" }).click();
  await name(page, "Splitter", "a plug is off");
  expect(await points(page)).toBeGreaterThan(guessed);
});
