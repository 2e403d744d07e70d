/** Finding things in a page by what they are called, and waiting until they are there. */
import type { Page, Point } from "./engine.ts";

/** Asks until the answer is yes (neither null, nor false, nor 0), or says what it waited for. */
export async function until<T>(what: string, ask: () => Promise<T>, seconds = 15): Promise<NonNullable<T>> {
  const end = Date.now() + seconds * 1000;
  for (;;) {
    const answer = await ask();
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`Waited ${seconds} s for: ${what}`);
    await new Promise((done) => setTimeout(done, 100));
  }
}

/** Where something is as soon as it is twice at the same place: pressed while it moves, it would be missed. */
export function standing(what: string, ask: () => Promise<Point | null>): Promise<Point> {
  let before: Point | null = null;
  return until(what, async () => {
    const last = before;
    before = await ask();
    return before?.x === last?.x && before?.y === last?.y ? before : null;
  });
}

/** The middle of what can be pressed and has this name; the first that is on the screen, as soon as it stands still. */
export function find(page: Page, name: string | RegExp, within = "body"): Promise<Point> {
  const pattern = typeof name === "string" ? `^${name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$` : name.source;
  return standing(`“${pattern}” in ${within}`, () =>
    page.ask(
      (wanted, place) => {
        const things = "button, a, input, textarea, [role=button], [role=menuitem], [role=tab], .strip-plate";
        for (const area of document.querySelectorAll(place)) {
          for (const thing of area.querySelectorAll(things)) {
            const named = thing.getAttribute("aria-label") ?? thing.textContent ?? "";
            const { x, y, width, height } = thing.getBoundingClientRect();
            if (width > 0 && new RegExp(wanted).test(named.trim()))
              return { x: x + width / 2, y: y + height / 2 };
          }
        }
        return null;
      },
      pattern,
      within,
    ),
  );
}

export async function press(page: Page, name: string | RegExp, within?: string): Promise<void> {
  await page.click(await find(page, name, within));
}

export const count = (page: Page, selector: string): Promise<number> =>
  page.ask((s) => document.querySelectorAll(s).length, selector);

export const hasText = (page: Page, pattern: RegExp): Promise<boolean> =>
  page.ask((source) => new RegExp(source).test(document.body.innerText), pattern.source);

export const title = (page: Page): Promise<string> =>
  page.ask(() => document.querySelector<HTMLInputElement>('[aria-label="Title of the design"]')?.value ?? "");

/** Opens an address of the app and waits for a design with cards on the canvas. */
export async function openDesign(page: Page, address: string): Promise<void> {
  await page.open(address);
  await until(`a design at ${address}`, async () => (await count(page, `${CARD}, .overview`)) > 0);
}

export const CARD = ".react-flow__node";
export const WIRE = ".react-flow__edge";
/** Of a card, or of a place in the overview. */
export const STRIP = ".docked-strip .strip-plate, .overview .strip-plate";

/** Gives the design another title, by keys. */
export async function retitle(page: Page, words: string): Promise<void> {
  await press(page, "Title of the design");
  await page.ask(() =>
    document.querySelector<HTMLInputElement>('[aria-label="Title of the design"]')?.select(),
  );
  await page.type(words);
  await page.press("Enter");
}
