/** What undo says of itself. The sentences are those of the announcer; here it is when they are said. */
import { beforeEach, describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../src/design/design.ts";
import { addPart, newPart, rename } from "../../src/design/edits/parts.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { useApp } from "../../src/store/app.ts";
import { redoStep, undoStep } from "../../src/store/steps.ts";

const app = () => useApp.getState();
const said = () => app().notices.map(({ text }) => text);

beforeEach(() => {
  app().openDesign(EMPTY_DESIGN);
  for (const { id } of app().notices) app().dismiss(id);
  const part = newPart(EMPTY_DESIGN, "outlet-tv", [0, 0]);
  if (part) app().change(addPart(app().design, { ...part, id: "p", label: "Plate bedroom 1" }));
});

describe("a step taken back", () => {
  test("is shown as what it was", () => {
    app().change(removeParts(app().design, new Set(["p"]), new Set()));
    undoStep();
    expect(app().design.parts.map(({ id }) => id)).toEqual(["p"]);
    expect(said()).toEqual(["Undone: “Plate bedroom 1” deleted."]);
  });

  test("and done again says so too", () => {
    app().change(rename(app().design, "p", "Plate attic"));
    undoStep();
    redoStep();
    expect(said().at(-1)).toBe("Redone: “Plate bedroom 1” renamed to “Plate attic”.");
  });

  test("that is none says nothing", () => {
    undoStep();
    undoStep();
    const before = said();
    undoStep();
    expect(said()).toEqual(before);
  });
});
