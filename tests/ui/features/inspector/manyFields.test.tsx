// @vitest-environment happy-dom
/** Values that several parts share, set at once. Roles as in WAI-ARIA 1.2. */
import { cleanup, fireEvent, render, screen } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, expect, test } from "vitest";
import { useApp } from "../../../../src/store/app.ts";
import { ManyFields } from "../../../../src/ui/features/inspector/ManyFields.tsx";
import { draw } from "../../../draw.ts";

const app = () => useApp.getState();
const lengths = () => app().design.parts.map(({ options }) => options.lengthM);

beforeEach(() =>
  app().openDesign(draw({ a: ["cable", { lengthM: 5 }], b: ["cable", { lengthM: 9 }], s: ["splitter"] }, "")),
);
afterEach(cleanup);

function show(parts: readonly string[]): void {
  render(
    <Tooltip.Provider>
      <ManyFields parts={parts} />
    </Tooltip.Provider>,
  );
}

test("a length that differs says so, and is set for all in one step", () => {
  show(["a", "b"]);
  const length = screen.getByRole("spinbutton", { name: "Length" });
  expect(screen.getByText("Not the same in all of them now.")).toBeDefined();
  fireEvent.change(length, { target: { value: "12" } });
  expect(lengths()).toEqual([12, 12, undefined]);
  app().undo();
  expect(lengths()).toEqual([5, 9, undefined]);
});

test("what cannot be taken is refused for all", () => {
  show(["a", "b"]);
  // A run of cable is 500 m at most.
  fireEvent.change(screen.getByRole("spinbutton", { name: "Length" }), { target: { value: "900" } });
  expect(lengths()).toEqual([5, 9, undefined]);
  expect(screen.getByRole("alert").textContent).toContain("Not taken yet");
});

test("parts that share no value show none", () => {
  show(["a", "s"]);
  expect(screen.queryByRole("spinbutton", { name: "Length" })).toBeNull();
});
