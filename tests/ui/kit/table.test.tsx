// @vitest-environment happy-dom
/** What a table tells whoever cannot see it, and how its boxes are gone through by keys (HTML, WAI-ARIA 1.2). */
import { cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, test } from "vitest";
import { Table } from "../../../src/ui/kit/Table.tsx";

afterEach(cleanup);

const FRUIT = [
  { name: "apple", grams: 180, faults: ["one wormhole", "one bruise"] },
  { name: "plum", grams: 45, faults: [] },
];

describe("a table", () => {
  test("has its rows named by the column that is told, and its short heading read out", () => {
    render(
      <Table
        label="Fruit"
        nameAt={1}
        rows={FRUIT}
        keyOf={({ name }) => name}
        columns={[
          { head: "Number", sign: "#", cell: (_, n) => n + 1 },
          { head: "Kind", cell: ({ name }) => name },
          { head: "Weight", unit: "g", isNumber: true, cell: ({ grams }) => grams },
        ]}
      />,
    );
    // Wider than its pane it scrolls, which keys can do only in something that takes the focus.
    expect(screen.getByRole("group", { name: "Fruit" }).tabIndex).toBe(0);
    expect(screen.getAllByRole("rowheader").map((th) => th.textContent)).toEqual(["apple", "plum"]);
    expect(screen.getByRole("columnheader", { name: "Number" })).toBeTruthy();
    expect(screen.getByRole("columnheader", { name: "Weight g" })).toBeTruthy();
  });

  test("says below a row what is to be said of it, over the whole width", () => {
    render(
      <Table
        label="Fruit"
        fits
        rows={FRUIT}
        keyOf={({ name }) => name}
        columns={[
          { head: "Kind", cell: ({ name }) => name },
          { head: "Weight", cell: ({ grams }) => grams },
        ]}
        linesBelow={({ faults }) => faults}
      />,
    );
    const rows = within(screen.getByRole("table", { name: "Fruit" })).getAllByRole("row");
    expect(rows.map((row) => row.textContent)).toEqual([
      "KindWeight",
      "apple180",
      "one wormhole",
      "one bruise",
      "plum45",
    ]);
    expect(screen.getByRole("cell", { name: "one bruise" })).toHaveProperty("colSpan", 2);
  });

  test("of boxes is gone through by the arrow keys, and its edges hold", () => {
    render(
      <Table
        label="Boxes"
        isGrid
        rows={FRUIT}
        keyOf={({ name }) => name}
        columns={[
          { head: "Kind", cell: ({ name }) => name },
          { key: "a", head: "Box", cell: ({ name }) => <button type="button">{name} a</button> },
          { key: "b", head: "Box", cell: ({ name }) => <button type="button">{name} b</button> },
        ]}
      />,
    );
    const press = (key: string) => fireEvent.keyDown(document.activeElement ?? document.body, { key });
    const focused = () => document.activeElement?.textContent;
    screen.getByRole("button", { name: "apple a" }).focus();
    press("ArrowRight");
    expect(focused()).toBe("apple b");
    press("ArrowDown");
    expect(focused()).toBe("plum b");
    press("ArrowRight");
    press("ArrowDown");
    expect(focused()).toBe("plum b");
    press("ArrowLeft");
    press("ArrowUp");
    expect(focused()).toBe("apple a");
  });
});
