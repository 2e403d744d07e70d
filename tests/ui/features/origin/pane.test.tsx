// @vitest-environment happy-dom
/** The way back to the source as a user meets it. Roles and states are those of WAI-ARIA 1.2. */
import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { setOption } from "../../../../src/design/edits/options.ts";
import { removeParts } from "../../../../src/design/edits/remove.ts";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { useApp } from "../../../../src/store/app.ts";
import { Inspector } from "../../../../src/ui/features/inspector/Inspector.tsx";
import { LevelDiagram } from "../../../../src/ui/features/origin/LevelDiagram.tsx";
import { levelOrigin } from "../../../../src/ui/features/origin/levelOrigin.ts";
import { VerdictPane } from "../../../../src/ui/features/verdict/VerdictPane.tsx";
import { closeQuestion } from "../../../../src/ui/kit/asked/questionState.ts";
import { verdictQuestion } from "../../../../src/ui/kit/asked/verdictQuestion.ts";
import { usePanes } from "../../../../src/ui/kit/panes.ts";
import { LowerPane } from "../../../../src/ui/shell/LowerPane.tsx";

const app = () => useApp.getState();

function show(children: ReactNode) {
  return render(
    <Tooltip.Provider>
      {children}
      <LowerPane />
    </Tooltip.Provider>,
  );
}

function open(key: string) {
  const example = EXAMPLES.find((e) => e.key === key);
  if (!example) throw new Error(`no example ${key}`);
  act(() => app().openDesign(example.load()));
}

const pane = () => screen.queryByRole("region", { name: "How this level came about" });
const stepRows = () =>
  within(within(pane() ?? document.body).getByRole("table"))
    .getAllByRole("row")
    .slice(1);

/** Opens the services of a television and presses one of their figures. */
function askFromVerdict(figure: RegExp) {
  const [toggle] = screen.getAllByRole("button", { name: /^Services of TV/ });
  if (toggle) fireEvent.click(toggle);
  const [press] = screen.getAllByRole("button", { name: figure });
  if (!press) throw new Error(`no figure ${figure}`);
  press.focus();
  fireEvent.click(press);
  return press;
}

beforeEach(() => open("house-universal"));
afterEach(() => {
  cleanup();
  closeQuestion();
});

describe("how a level came about", () => {
  test("a figure of the verdict opens it, names the carrier and takes the focus", () => {
    show(<VerdictPane />);
    askFromVerdict(/^Min C\/N of Terrestrial TV/);
    expect(pane()?.textContent).toMatch(/lowest C\/N of \d+ TV channels/);
    expect(document.activeElement?.textContent).toBe("How this level came about");
    expect(stepRows().length).toBeGreaterThan(2);
  });

  test("a press on a part selects and frames it, and its row is marked", () => {
    show(<VerdictPane />);
    askFromVerdict(/^Min C\/N of Terrestrial TV/);
    const [, second] = stepRows();
    const press = within(second ?? document.body).getByRole("button");
    fireEvent.click(press);
    expect(app().selection.parts).toHaveLength(1);
    expect(app().framing?.parts).toEqual(app().selection.parts);
    const [chosen] = app().selection.parts;
    expect(app().evaluation.record(chosen ?? "")?.part.label).toBe(press.textContent);
    expect(stepRows()[1]?.dataset.marked).toBe("true");
  });

  test("Escape closes it and gives the focus back to the figure", () => {
    show(<VerdictPane />);
    const press = askFromVerdict(/^Min C\/N of Terrestrial TV/);
    fireEvent.keyDown(document.activeElement ?? document.body, { key: "Escape" });
    expect(pane()).toBeNull();
    expect(document.activeElement).toBe(press);
  });

  test("follows an edit, and says so when the carrier is gone", () => {
    show(<VerdictPane />);
    askFromVerdict(/^(Lowest level|Level) of Terrestrial TV/);
    const words = () => pane()?.textContent ?? "";
    const before = words();
    const aerial = app().design.parts.find((p) => p.kind === "aerial-uhf")?.id ?? "";
    act(() => void app().change(setOption(app().design, aerial, "levelDbuv", 51.3)));
    expect(words()).not.toBe(before);
    expect(words()).toContain("51.3");
    act(() => void app().change(removeParts(app().design, new Set([aerial]), new Set())));
    expect(words()).toContain("does not get here any more");
  });

  test("another design puts it away", () => {
    show(<VerdictPane />);
    askFromVerdict(/^Min C\/N of Terrestrial TV/);
    open("house-stacked");
    expect(pane()).toBeNull();
  });

  test("leaves the panes as they were", () => {
    usePanes.setState({ spectrumOpen: false, sheet: "verdict" });
    show(<VerdictPane />);
    askFromVerdict(/^Min C\/N of Terrestrial TV/);
    expect(usePanes.getState()).toMatchObject({ spectrumOpen: true, sheet: "spectrum" });
    fireEvent.click(screen.getByRole("button", { name: /^Close, back/ }));
    expect(usePanes.getState()).toMatchObject({ spectrumOpen: false, sheet: "verdict" });
  });

  test("a level at a port of a part leads there too, at that very port", () => {
    const plate = app().design.parts.find((p) => p.kind.startsWith("outlet"));
    act(() => app().select({ parts: [plate?.id ?? ""] }));
    show(<Inspector />);
    const [press] = screen.getAllByRole("button", { name: /^(Level|Lowest level), TV/ });
    if (press) fireEvent.click(press);
    expect(pane()?.textContent).toContain(` at ${plate?.label}, `);
  });

  test("Enter on a carrier's level in the spectrum, or a double click on its row, asks as well", () => {
    const [wire] = app().design.wires.filter((w) => w.to[0] === app().design.parts.at(-1)?.id);
    act(() => app().select({ parts: [wire?.to[0] ?? ""] }));
    show(null);
    const table = screen.getByRole("region", { name: "Carriers" });
    const rows = within(table).getAllByRole("row");
    const row = rows.find((r) => /Good/.test(r.textContent ?? ""));
    if (!row) throw new Error("a working receiver has a good carrier");
    fireEvent.doubleClick(row);
    const name = row.querySelector("th")?.firstChild?.textContent?.trim() ?? "";
    expect(pane()?.textContent).toContain(name);
    act(() => closeQuestion());
    const [again] = within(screen.getByRole("region", { name: "Carriers" })).getAllByRole("button", {
      name: /how it came about/,
    });
    if (again) fireEvent.click(again);
    expect(pane()).not.toBeNull();
  });

  test("the level diagram says in words what it draws, and draws a point for every step", () => {
    const { evaluation } = app();
    const set = evaluation.records.find((r) => r.kind.kind === "receiver-tv");
    const question = set && verdictQuestion(set, "tv", "cnMin");
    const found = question && levelOrigin(evaluation, question);
    if (!found) throw new Error("a television of the example gets television");
    const { container } = render(<LevelDiagram answer={found} width={600} height={200} />);
    expect(screen.getByRole("img", { name: /^Level diagram: from .* to .* dBµV/ })).toBeTruthy();
    expect(container.querySelectorAll("circle")).toHaveLength(found.steps.length);
  });
});
