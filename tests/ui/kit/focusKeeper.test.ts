// @vitest-environment happy-dom
/** Where the focus goes when what had it is gone: WCAG 2.2, 2.4.3, leaves the place open, so it is our own choice. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { keepFocus } from "../../../src/ui/kit/focusKeeper.ts";

let end: () => void = () => {};

beforeEach(() => {
  document.body.innerHTML = `
    <main><div class="canvas" tabindex="-1"><button id="card">Card</button></div></main>
    <aside id="pane"><p id="words">Words</p><button id="row">Row</button></aside>`;
  end = keepFocus();
});
afterEach(() => {
  end();
  document.body.innerHTML = "";
});

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};
const focus = () => document.activeElement;

describe("the focus", () => {
  test("stays with the page until something has had it", async () => {
    document.body.append(document.createElement("p"));
    await new Promise((done) => setTimeout(done, 200));
    expect(focus()).toBe(document.body);
  });

  test("goes to the region around what was taken away", async () => {
    element("row").focus();
    element("row").remove();
    await vi.waitFor(() => expect(focus()).toBe(element("pane")));
  });

  test.each([
    ["is taken away", (card: HTMLElement) => card.remove()],
    ["lets go of it", (card: HTMLElement) => card.blur()],
  ])("stays with the canvas, at once, when a card of it %s", async (_, leave) => {
    element("card").focus();
    leave(element("card"));
    await Promise.resolve();
    await Promise.resolve();
    expect(focus()).toBe(document.querySelector(".canvas"));
  });

  test("goes to the canvas when the whole region went", async () => {
    element("row").focus();
    element("pane").remove();
    await vi.waitFor(() => expect(focus()).toBe(document.querySelector(".canvas")));
  });

  test("goes to the region that was pressed", async () => {
    element("card").focus();
    element("words").dispatchEvent(new PointerEvent("pointerdown", { bubbles: true }));
    element("card").blur();
    element("words").dispatchEvent(new MouseEvent("click", { bubbles: true }));
    await vi.waitFor(() => expect(focus()).toBe(element("pane")));
  });

  test("stays where it was put meanwhile", async () => {
    element("card").focus();
    element("card").remove();
    element("row").focus();
    await new Promise((done) => setTimeout(done, 200));
    expect(focus()).toBe(element("row"));
  });
});
