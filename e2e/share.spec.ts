/** Passing a design on: by link and by file; and what comes of links and files that are no good. */
import type { Page } from "@playwright/test";
import {
  cards,
  download,
  fromMenu,
  open,
  ownDesign,
  retitle,
  titleOf,
  upload,
  waitUntilSaved,
} from "./app.ts";
import { expect, test, watch } from "./test.ts";

test.use({ permissions: ["clipboard-read", "clipboard-write"] });

/** Copies the link of the open design, and reads what lies in the clipboard then. */
async function copyLink(page: Page): Promise<string> {
  await page.getByRole("button", { name: "Share", exact: true }).click();
  const dialog = page.getByRole("dialog", { name: "Share this design" });
  await dialog.getByRole("button", { name: "Copy the link" }).click();
  await expect(dialog.getByText("Copied.")).toBeVisible();
  await dialog.getByRole("button", { name: "Close" }).click();
  return page.evaluate(() => navigator.clipboard.readText());
}

/** Titles of the own designs, as the list shows them. */
async function ownTitles(page: Page): Promise<readonly string[]> {
  await fromMenu(page, "Designs and examples…");
  const dialog = page.getByRole("dialog", { name: "Designs" });
  const rename = dialog.getByRole("button", { name: /^Rename “/ });
  await expect(rename.first()).toBeVisible();
  const names = await rename.evaluateAll((buttons) => buttons.map((b) => b.getAttribute("aria-label") ?? ""));
  await dialog.getByRole("button", { name: "Close" }).click();
  return names.map((name) => name.replace(/^Rename “(.*)”$/, "$1")).sort();
}

test("a copied link opens the same design in another browser", async ({ page, browser, baseURL }) => {
  await ownDesign(page, "House to be passed on");
  const link = await copyLink(page);
  // What the project promises for a typical house.
  expect(link.length).toBeLessThan(2000);
  const sent = await download(page);

  const other = await browser.newContext();
  const complaints = await watch(other, baseURL);
  const theirs = await other.newPage();
  await open(theirs, link);
  await expect(titleOf(theirs)).toHaveValue("House to be passed on");
  await expect(theirs.getByText("All 7 receivers work.", { exact: true })).toBeVisible();
  await waitUntilSaved(theirs);
  expect((await download(theirs)).text).toBe(sent.text);
  // Once it is stored there, the address no longer carries it: reloading makes no second copy.
  expect(new URL(theirs.url()).hash).toBe("");
  await theirs.reload();
  await expect(titleOf(theirs)).toHaveValue("House to be passed on");
  expect(await ownTitles(theirs)).toEqual(["House to be passed on"]);
  expect(complaints).toEqual([]);
  await other.close();
});

test("a link opens beside the present design and never over it", async ({ page }) => {
  await ownDesign(page, "Theirs");
  const link = await copyLink(page);
  await fromMenu(page, "New design");
  await retitle(page, "Mine");
  await waitUntilSaved(page);

  // Pasted into the address of the open page, only the fragment changes.
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, new URL(link).hash);
  await expect(titleOf(page)).toHaveValue("Theirs");
  expect(await ownTitles(page)).toEqual(["Mine", "Theirs", "Theirs"]);
  await fromMenu(page, "Designs and examples…");
  await page.getByRole("button", { name: /^Mine / }).click();
  await expect(titleOf(page)).toHaveValue("Mine");
  await expect(cards(page)).toHaveCount(0);
});

test("links that are cut short, damaged or too new are refused in words and leave the design alone", async ({
  page,
}) => {
  await ownDesign(page, "Untouched");
  const link = await copyLink(page);
  const before = await download(page);
  const { hash } = new URL(link);
  const swapped = hash.at(-20) === "A" ? "B" : "A";
  const bad = [
    { hash: hash.slice(0, hash.length / 2), words: /^This link was cut short: about \d+ % is missing/ },
    { hash: `${hash.slice(0, -20)}${swapped}${hash.slice(-19)}`, words: /^This link is damaged/ },
    { hash: hash.replace("#d1.", "#d7."), words: /made by a newer edition/ },
    { hash: "#d1.%00%00", words: /^This link is damaged|^This link was cut short/ },
  ];
  const said = page.getByRole("alertdialog", { name: "The link did not open" });
  for (const { hash: wrong, words } of bad) {
    await page.evaluate((to) => {
      window.location.hash = to;
    }, wrong);
    await expect(said.getByText(words)).toBeVisible();
    await said.getByRole("button", { name: "Back to “Untouched”" }).click();
    await expect(said).toBeHidden();
  }
  expect((await download(page)).text).toBe(before.text);

  // Where it is the first address of a new page, nothing may look as if it had opened; the way on is one step.
  const { pathname } = new URL(page.url());
  await page.goto("about:blank");
  await page.goto(pathname + hash.slice(0, 60));
  await expect(said.getByText(/^This link was cut short/)).toBeVisible();
  await expect(cards(page)).toHaveCount(0);
  await said.getByRole("button", { name: "Open what was open last" }).click();
  await expect(titleOf(page)).toHaveValue("Untouched");
  expect((await download(page)).text).toBe(before.text);
});

test("files that cannot be read are refused with the place of the fault and leave the design alone", async ({
  page,
}) => {
  await ownDesign(page, "Untouched");
  const before = await download(page);
  const { file } = before;
  const [part] = file.parts;
  const text = (change: object) => JSON.stringify({ ...file, ...change });
  const bad = [
    { name: "half.json", text: before.text.slice(0, 800), words: /“half\.json”: .*line \d+/ },
    { name: "letter.json", text: '{"dear": "customer"}', words: /“letter\.json”: This is not a design/ },
    { name: "newer.json", text: text({ version: 99 }), words: /written by a newer edition/ },
    {
      name: "kind.json",
      text: text({ parts: [{ ...part, kind: "kettle" }] }),
      words: /does not know the kind of part “kettle”/,
    },
    {
      name: "twice.json",
      text: text({ parts: [part, part] }),
      words: /the id “\w+” belongs to “.*” already/,
    },
    {
      name: "dangling.json",
      text: text({ wires: [{ from: ["nobody", "out"], to: ["lnb", "sky"] }] }),
      words: /starts at the part “nobody”, which is not in the design/,
    },
    {
      name: "crowd.json",
      text: text({ parts: Array(5001).fill({ id: "c", kind: "cable", options: {} }) }),
      words: /There are 5001 parts; a design holds at most 5000/,
    },
    { name: "deep.json", text: "[".repeat(100_000), words: /“deep\.json”: / },
    {
      name: "proto.json",
      text: before.text.replace(`"${part?.id}"`, '"__proto__"'),
      words: /“proto\.json”: /,
    },
  ];
  for (const { name, text: wrong, words } of bad) {
    await upload(page, name, wrong);
    const said = page.getByRole("alertdialog", { name: "The file did not open" });
    await expect(said.getByText(words), name).toBeVisible();
    await said.getByRole("button", { name: "Back to “Untouched”" }).click();
  }
  expect((await download(page)).text).toBe(before.text);
  expect(await ownTitles(page)).toEqual(["Untouched"]);
});

test("a downloaded file opens again as the same design, as a document of its own", async ({ page }) => {
  await ownDesign(page, "House on paper");
  const { text } = await download(page);
  await upload(page, "House on paper.json", text);
  // Of the same title and saved like the one before; but nothing has been done to it yet.
  await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
  await waitUntilSaved(page);
  expect((await download(page)).text).toBe(text);
  expect(await ownTitles(page)).toEqual(["House on paper", "House on paper"]);
});

test("a file that is dropped on the window opens", async ({ page }) => {
  await ownDesign(page, "Before");
  const { file } = await download(page);
  const data = await page.evaluateHandle(
    (text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], "dropped.json", { type: "application/json" }));
      return transfer;
    },
    JSON.stringify({ ...file, title: "Dropped" }),
  );
  await page.dispatchEvent("body", "dragover", { dataTransfer: data });
  await expect(page.getByText("Drop the file to open it").first()).toBeVisible();
  await page.dispatchEvent("body", "drop", { dataTransfer: data });
  await expect(titleOf(page)).toHaveValue("Dropped");
});
