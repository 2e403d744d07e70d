/** All that must work wherever the page came from: a server, the browser's own storage, or the disk. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, type Page } from "@playwright/test";
import { card, download, type File, fromMenu, open, titleOf, waitUntilSaved } from "./app.ts";

const folder = new URL("../src/design/examples/", import.meta.url);

/** Examples, cures, arranging, a link, help and licences. `page` stands at the app's address; `worker` names workers. */
export async function expectWholeApp(page: Page, address: string, worker: RegExp): Promise<void> {
  const workers: string[] = [];
  page.on("worker", (each) => workers.push(each.url()));

  for (const name of readdirSync(folder)) {
    const { title } = JSON.parse(readFileSync(new URL(name, folder), "utf8"));
    await page.goto(`${address}?example=${name.replace(".json", "")}`);
    await expect(titleOf(page)).toHaveValue(title);
  }

  await open(page, `${address}?example=house-wideband-fails`);
  await page.getByRole("button", { name: "Find cures", exact: true }).click();
  await expect(page.getByText(/^\d+ changes? tried, [1-9]\d* proved$/).first()).toBeVisible({
    timeout: 40_000,
  });
  expect(workers).toEqual([expect.stringMatching(worker)]);

  // The examples are arranged as they come: something has to be out of its place.
  await card(page, "UHF aerial").click();
  await page.keyboard.press("Shift+ArrowDown");
  await waitUntilSaved(page);
  const before = (await download(page)).file;
  await page.getByRole("button", { name: "Arrange everything" }).click();
  const placesOf = ({ parts }: File) => JSON.stringify(parts.map((part) => part.at));
  await expect
    .poll(async () => placesOf((await download(page)).file), { timeout: 30_000 })
    .not.toBe(placesOf(before));
  await waitUntilSaved(page);
  const { file } = await download(page);
  const x = (id: string) => file.parts.find((part) => part.id === id)?.at[0] ?? Number.NaN;
  for (const { from, to } of file.wires) expect(x(from[0]), `${from} to ${to}`).toBeLessThan(x(to[0]));
  expect(workers).toEqual([expect.stringMatching(worker), expect.stringMatching(worker)]);

  await page.getByRole("button", { name: "Share", exact: true }).click();
  const link = await page.getByLabel("Link to this design").inputValue();
  expect(link).toContain(`${address}#d`);
  // By way of another page, so that the link opens the app and does not only turn it to another place.
  await page.goto("about:blank");
  await open(page, link);
  await waitUntilSaved(page);
  expect((await download(page)).file).toEqual(file);

  await page.getByRole("button", { name: "Help" }).click();
  await page.getByRole("button", { name: "Licences of others" }).click();
  const licences = page.getByRole("dialog", { name: "Licences of others" });
  await licences.getByText("elkjs", { exact: true }).click();
  await expect(licences.getByText("https://github.com/kieler/elkjs")).toBeVisible();
  await expect(licences.getByText("Eclipse Public License - v 2.0")).toBeVisible();
  await licences.getByRole("button", { name: "Close" }).click();
  await fromMenu(page, "New design");
}
