// @vitest-environment happy-dom
/** The explanation under a finding as a user meets it. Roles and states are those of WAI-ARIA 1.2. */
import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { setOption } from "../../../../src/design/edits/options.ts";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { explainFinding, messageOf } from "../../../../src/sentences/finding.ts";
import { useApp } from "../../../../src/store/app.ts";
import { VerdictPane } from "../../../../src/ui/features/verdict/VerdictPane.tsx";
import { useBook } from "../../../../src/ui/kit/asked/book.ts";
import { setExplained } from "../../../../src/ui/kit/asked/explained.ts";
import { usePanes } from "../../../../src/ui/kit/panes.ts";

const app = () => useApp.getState();

const clash = () => {
  const found = app().report.findings.find((f) => f.rule === "shared-frequencies" && f.severity === "error");
  if (!found) throw new Error("no clash in the example");
  return found;
};

function openWhy() {
  const why = screen.getByRole("button", { name: `Why? ${messageOf(clash(), app().evaluation)}` });
  fireEvent.click(why);
  return why;
}

beforeEach(() => {
  const example = EXAMPLES.find((e) => e.key === "house-wideband-fails");
  if (!example) throw new Error("no such example");
  act(() => app().openDesign(example.load()));
  render(
    <Tooltip.Provider>
      <VerdictPane />
    </Tooltip.Provider>,
  );
});

afterEach(() => {
  act(() => {
    setExplained(clash(), false);
    usePanes.setState({ dialog: null });
  });
  cleanup();
});

describe("a finding's explanation", () => {
  test("opens under the finding with all three voices, and closes again", () => {
    const spoken = explainFinding(clash(), app().evaluation);
    const why = openWhy();
    expect(why.getAttribute("aria-expanded")).toBe("true");
    const panel = document.getElementById(why.getAttribute("aria-controls") ?? "");
    for (const voice of [spoken?.customer, spoken?.trade, spoken?.measure])
      expect(panel?.textContent).toContain(voice);
    fireEvent.click(why);
    expect(why.getAttribute("aria-expanded")).toBe("false");
    expect(screen.queryByText(spoken?.trade ?? "")).toBeNull();
  });

  test("shows a picture whose marks are told in words, too", () => {
    openWhy();
    const figure = screen.getByRole("figure");
    expect(figure.textContent).toContain("Behind “Diplexer");
    expect(within(figure).getAllByRole("listitem")[0]?.textContent).toMatch(/Clash: .* MHz/);
  });

  test("leads to its own rule and to the neighbouring ones", () => {
    openWhy();
    const links = within(screen.getByRole("navigation", { name: "In the rule book" }));
    expect(links.getAllByRole("button").length).toBeGreaterThan(1);
    fireEvent.click(links.getByRole("button", { name: /^Rule: / }));
    expect(usePanes.getState().dialog).toBe("rules");
    expect(useBook.getState().rule).toBe("shared-frequencies");
  });

  test("stays open while figures of the finding change", () => {
    openWhy();
    const before = clash().value;
    const dish = app().design.parts.find((p) => p.kind === "dish");
    if (!dish) throw new Error("no dish");
    act(() => app().change(setOption(app().design, dish.id, "diameterM", 1.2)));
    expect(clash().value).not.toBe(before);
    expect(screen.getByRole("figure")).toBeTruthy();
  });
});
