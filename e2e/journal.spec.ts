/** What is on the disk when a page ends in the worst way, and what the next one makes of it. */
import type { BrowserContext, Page } from "@playwright/test";
import { card, open, ownDesign, retitle, titleOf, waitUntilSaved } from "./app.ts";
import { expect, test, watch } from "./test.ts";

/** Gets ready to end the renderer of a page at once, as a crash does or a system that is short of memory. */
async function killer(page: Page): Promise<() => Promise<void>> {
  const session = await page.context().newCDPSession(page);
  return async () => {
    const crashed = page.waitForEvent("crash");
    // The answer never comes: there is nobody left to give it.
    session.send("Page.crash").catch(() => undefined);
    await crashed;
    await page.close();
  };
}

/** A number for whoever reads the test's output. */
function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** Title of the design with which the next page of this browser starts. */
async function titleAfter(context: BrowserContext): Promise<{ page: Page; title: string }> {
  const page = await context.newPage();
  await open(page, "/");
  return { page, title: await titleOf(page).inputValue() };
}

const KILLED_AFTER_MS = [0, 150, 300, 450, 600, 750, 900, 1000, 1000, 1000];

test("a renderer killed at any moment after an edit loses nothing older than a second", async ({
  page,
  context,
}) => {
  test.setTimeout(300_000);
  await ownDesign(page, "Before");
  let current = page;
  const lost: string[] = [];
  const tooOld: number[] = [];
  // At any moment it has to come up again; what is a second old has to be there.
  for (const wait of KILLED_AFTER_MS) {
    const kill = await killer(current);
    await retitle(current, `After ${wait}`);
    await current.waitForTimeout(wait);
    await kill();
    const next = await titleAfter(context);
    current = next.page;
    const isLost = next.title !== `After ${wait}`;
    if (isLost) lost.push(`${wait} ms (“${next.title}”)`);
    if (isLost && wait >= 1000) tooOld.push(wait);
  }
  say(
    `Edits lost of ${KILLED_AFTER_MS.length}, by the time from edit to kill: ${lost.length === 0 ? "none" : lost.join(", ")}`,
  );
  expect(tooOld).toEqual([]);
});

test("a renderer killed under constant editing loses at most the last second", async ({ page, context }) => {
  await ownDesign(page, "Edit 0");
  const times: number[] = [Date.now()];
  await page.exposeFunction("note", (n: number) => {
    times[n] = Date.now();
  });
  const kill = await killer(page);
  // A hand that never rests: an edit every 30 ms, each noted before it is made, until the page is no more.
  const editing = page.evaluate(async () => {
    const field = document.querySelector<HTMLInputElement>('[aria-label="Title of the design"]');
    const { set } = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value") ?? {};
    for (let n = 1; field; n += 1) {
      Reflect.get(window, "note")(n);
      field.focus();
      set?.call(field, `Edit ${n}`);
      field.dispatchEvent(new Event("input", { bubbles: true }));
      field.blur();
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
  });
  await page.waitForTimeout(4000);
  await Promise.all([kill(), editing.catch(() => undefined)]);
  const { title } = await titleAfter(context);
  const last = Number(title.replace("Edit ", ""));
  const lost = times.slice(last + 1);
  const oldest = lost.length === 0 ? 0 : Math.max(...times) - (lost[0] ?? 0);
  say(
    `Edits lost of ${times.length - 1} under constant editing: ${lost.length}, the oldest ${oldest} ms old`,
  );
  expect(last).toBeGreaterThan(0);
  expect(oldest).toBeLessThan(1000);
});

test("undo and redo lead on after a reload and after a crash", async ({ page, context }) => {
  await ownDesign(page, "Long way");
  await card(page, "UHF aerial").click();
  await page.keyboard.press("Delete");
  await card(page, "DAB aerial").click();
  await page.keyboard.press("Delete");
  await page.keyboard.press("ControlOrMeta+z");
  await expect(card(page, "DAB aerial")).toBeVisible();
  await waitUntilSaved(page);
  await page.reload();
  await expect(titleOf(page)).toHaveValue("Long way");
  await expect(card(page, "UHF aerial")).toHaveCount(0);
  await page.getByRole("button", { name: "Redo", exact: true }).first().click();
  await expect(card(page, "DAB aerial")).toHaveCount(0);
  await waitUntilSaved(page);
  await (await killer(page))();

  const next = await context.newPage();
  await open(next, "/");
  const undo = next.getByRole("button", { name: "Undo", exact: true }).first();
  for (const label of ["DAB aerial", "UHF aerial"]) {
    await expect(card(next, label)).toHaveCount(0);
    await undo.click();
    await expect(card(next, label)).toBeVisible();
  }
  await undo.click();
  await expect(titleOf(next)).not.toHaveValue("Long way");
});

test("leaving in the same breath as an edit keeps it, and the next page starts at once", async ({ page }) => {
  await ownDesign(page, "0");
  for (let n = 1; n <= 4; n += 1) {
    await titleOf(page).fill(`${n}`);
    await titleOf(page).press("Enter");
    await page.reload();
    await expect(titleOf(page)).toHaveValue(`${n}`);
  }
  await waitUntilSaved(page);
  const notes = () => page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes("parting")));
  await expect.poll(notes).toEqual([]);
});

test("a storage that never answers: the page comes up all the same, says so, and recovers", async ({
  page,
  context,
}) => {
  await ownDesign(page, "Mine");
  await page.close();
  const next = await context.newPage();
  await next.addInitScript(() => {
    if (sessionStorage.getItem("silent")) return;
    sessionStorage.setItem("silent", "once");
    const { addEventListener } = IDBOpenDBRequest.prototype;
    // The question is asked, and nobody hears the answer.
    IDBOpenDBRequest.prototype.addEventListener = () => undefined;
    Object.assign(window, {
      letAnswer: () => {
        IDBOpenDBRequest.prototype.addEventListener = addEventListener;
      },
    });
  });
  const started = Date.now();
  await open(next, "/");
  await expect(next.getByText(/^Not saved: the browser’s storage does not answer/).first()).toBeVisible();
  const took = Date.now() - started;
  say(`Up without storage after ${took} ms`);
  await retitle(next, "Without storage");
  await expect(next.getByRole("banner").getByRole("status")).toHaveText("Not saved");
  await next.evaluate("letAnswer()");
  await waitUntilSaved(next);
  await expect(next.getByText(/does not answer/)).toHaveCount(0);
  await next.reload();
  await expect(titleOf(next)).toHaveValue("Without storage");
});

test("a storage cleared while the page is open gets the design again, and what is damaged is told", async ({
  page,
  browser,
  baseURL,
}) => {
  await ownDesign(page, "Mine");
  const session = await page.context().newCDPSession(page);
  const origin = new URL(page.url()).origin;
  await session.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
  await retitle(page, "Mine, on");
  await waitUntilSaved(page);
  await expect(
    page
      .getByText(/no longer in the browser’s storage/)
      .first()
      .first(),
  ).toBeVisible();
  await page.reload();
  await expect(titleOf(page)).toHaveValue("Mine, on");

  // A profile of its own shares nothing with this one.
  const other = await browser.newContext();
  const complaints = await watch(other, baseURL);
  const stranger = await other.newPage();
  await open(stranger, "/");
  await expect(titleOf(stranger)).not.toHaveValue("Mine, on");
  await other.close();
  expect(complaints).toEqual([]);
});

test("a damaged index hides no design", async ({ page }) => {
  await ownDesign(page, "Hidden");
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const request = indexedDB.open("downlead-2");
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const tx = request.result.transaction("heads", "readwrite");
          tx.objectStore("heads").clear();
          tx.oncomplete = () => {
            request.result.close();
            resolve();
          };
        };
      }),
  );
  await page.reload();
  await expect(titleOf(page)).toHaveValue("Hidden");
  await retitle(page, "Found again");
  await waitUntilSaved(page);
  await page.reload();
  await expect(titleOf(page)).toHaveValue("Found again");
});

test("a second window follows at once, and edits of different parts are merged", async ({
  page,
  context,
}) => {
  await ownDesign(page, "Shared");
  const second = await context.newPage();
  await open(second, "/");
  await card(second, "DAB aerial").click();

  await card(page, "UHF aerial").click();
  await page.keyboard.press("Delete");
  await expect(card(second, "UHF aerial")).toHaveCount(0);
  // What was selected here stays selected.
  await expect(card(second, "DAB aerial")).toHaveClass(/selected/);
  await second.keyboard.press("Delete");
  await expect(card(page, "DAB aerial")).toHaveCount(0);
  await waitUntilSaved(page);

  // Both at once: each in a part of its own, while neither hears the other.
  await Promise.all([retitle(page, "Shared, both"), moveWithKeys(second, "FM aerial")]);
  await expect(titleOf(second)).toHaveValue("Shared, both");
  await waitUntilSaved(page);
  await waitUntilSaved(second);
  const places = await Promise.all(
    [page, second].map((each) => card(each, "FM aerial").evaluate((node) => node.style.transform)),
  );
  expect(places[0]).toBe(places[1]);
});

async function moveWithKeys(page: Page, label: string): Promise<void> {
  await card(page, label).click();
  await page.keyboard.press("ArrowRight");
}
