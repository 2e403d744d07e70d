/** The one list of what must work in every browser. Each step begins with a profile in which nothing is stored. */
import { readdirSync } from "node:fs";
import type { Page } from "./engine.ts";
import {
  CARD,
  count,
  find,
  hasText,
  openDesign,
  press,
  retitle,
  STRIP,
  standing,
  title,
  until,
  WIRE,
} from "./hand.ts";

/** A window in a new profile, the address of the app, and how to get one more such window. */
export type Visit = { readonly page: Page; readonly app: string; readonly newPage: () => Promise<Page> };

export type Step = {
  readonly name: string;
  /** What the page must complain of in the console; nothing where it is left out. */
  readonly complaint?: RegExp;
  readonly walk: (visit: Visit) => Promise<void>;
};

const EXAMPLES = readdirSync(new URL("../../src/design/examples/", import.meta.url)).map((name) =>
  name.replace(/\.json$/, ""),
);

export const STEPS: readonly Step[] = [
  {
    name: "every example opens, with a strip on its wires",
    walk: async ({ page, app }) => {
      for (const key of EXAMPLES) {
        await openDesign(page, `${app}?example=${key}`);
        await until(`strips in ${key}`, async () => (await count(page, STRIP)) > 0);
      }
    },
  },
  {
    name: "parts come out of the tray, are joined, and the wire shows its spectrum",
    walk: async ({ page, app }) => {
      await openDesign(page, app);
      await press(page, "Design menu");
      await press(page, "New design");
      await until("an empty canvas", async () => (await count(page, CARD)) === 0);
      await press(page, "All parts");
      await page.drag(await find(page, "Dish"), { x: 400, y: 400 });
      await page.drag(await find(page, "Universal LNB"), { x: 720, y: 400 });
      await until("two cards", async () => (await count(page, CARD)) === 2);
      await page.drag(await find(page, /^Output feed, free$/), await find(page, /^Input feed, free$/));
      await until("a wire", async () => (await count(page, WIRE)) === 1);
      await find(page, /^Output feed, connected$/);
      // Its card first, then its strip: the second press goes on to the wire.
      const strip = await middleOf(page, ".strip[data-wire]");
      for (let presses = 0; presses < 2; presses++) await page.click(strip);
      await until(
        "carriers in the spectrum",
        async () => (await count(page, "[data-region=below] svg path, [data-region=below] svg rect")) > 10,
      );
    },
  },
  {
    name: "cures are found, tried in a worker",
    walk: async ({ page, app }) => {
      await openDesign(page, `${app}?example=house-wideband-fails`);
      await press(page, "Find cures");
      await until("proved cures", () => hasText(page, /\d+ changes? tried, [1-9]\d* proved/), 60);
    },
  },
  {
    name: "the design is arranged, in a worker",
    walk: async ({ page, app }) => {
      await openDesign(page, `${app}?example=house-universal`);
      // The examples are arranged as they come: something has to be out of its place.
      const card = await middleOf(page, CARD);
      await page.drag(card, { x: card.x + 40, y: card.y + 90 });
      const before = await places(page);
      await press(page, "Arrange everything");
      await until("cards in other places", async () => (await places(page)) !== before, 30);
      await find(page, "Undo");
    },
  },
  {
    name: "a link opens the design in another profile",
    walk: async ({ page, app, newPage }) => {
      await openDesign(page, `${app}?example=house-stacked`);
      await retitle(page, "Passed on");
      await press(page, "Share");
      const link = await until("a link", () =>
        page.ask(() => {
          const fields = [...document.querySelectorAll("textarea")];
          return fields.find((field) => field.value.includes("#d"))?.value;
        }),
      );
      const other = await newPage();
      await openDesign(other, link);
      await until("its title", async () => (await title(other)) === "Passed on");
      await until("its strips", async () => (await count(other, STRIP)) > 0);
      await other.close();
    },
  },
  {
    name: "what was saved is there after a reload",
    walk: async ({ page, app }) => {
      await openDesign(page, `${app}?example=house-universal`);
      await retitle(page, "Kept");
      await until("Saved", () => hasText(page, /\bSaved\b/));
      await openDesign(page, app);
      await until("its title", async () => (await title(page)) === "Kept");
    },
  },
  {
    name: "where the app cannot be loaded, the page says what to do",
    complaint: /not loaded: <script/,
    walk: ({ page, app }) => saysWhatToDo(page, `${app}broken/`),
  },
  {
    name: "an older browser is told that it is too old",
    complaint: /error: .*too old for Downlead/,
    walk: ({ page, app }) => saysWhatToDo(page, `${app}older/`),
  },
  {
    name: "a page left within a second of an edit comes back with it",
    walk: async ({ page, app }) => {
      await openDesign(page, `${app}?example=house-universal`);
      for (const waitMs of [0, 250, 500, 750]) {
        await retitle(page, `Left after ${waitMs} ms`);
        await new Promise((done) => setTimeout(done, waitMs));
        await page.open("about:blank");
        await openDesign(page, app);
        await until(
          `the edit made ${waitMs} ms before`,
          async () => (await title(page)) === `Left after ${waitMs} ms`,
        );
      }
    },
  },
];

/** The middle of the first thing on the page that a selector finds. */
const middleOf = (page: Page, selector: string): Promise<{ x: number; y: number }> =>
  standing(selector, () =>
    page.ask((wanted) => {
      const box = document.querySelector(wanted)?.getBoundingClientRect();
      return box ? { x: box.x + box.width / 2, y: box.y + box.height / 2 } : null;
    }, selector),
  );

/** The page is not empty, does not only seem to wait, and names the browsers that it needs. */
async function saysWhatToDo(page: Page, address: string): Promise<void> {
  await page.open(address);
  await until("a sentence instead of the app", () => hasText(page, /needs Safari or iPadOS/), 8);
  if ((await count(page, ".app")) > 0) throw new Error("The app came up.");
}

const places = (page: Page): Promise<string> =>
  page.ask(() =>
    [...document.querySelectorAll<HTMLElement>(".react-flow__node")]
      .map((card) => card.style.transform)
      .join(),
  );
