// @vitest-environment happy-dom
/** Variants and their comparison as a user meets them. Our own behaviour; roles are those of WAI-ARIA 1.2. */
import { cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { setOption } from "../../../../src/design/edits/options.ts";
import { replaceKind } from "../../../../src/design/edits/replace.ts";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { activeName, variantNames } from "../../../../src/design/variants.ts";
import { PLACEHOLDER_PRICES } from "../../../../src/paperwork/prices.ts";
import { compareSites } from "../../../../src/remedies/compare.ts";
import { siteOf } from "../../../../src/remedies/site.ts";
import { useApp } from "../../../../src/store/app.ts";
import { CompareForm } from "../../../../src/ui/features/compare/CompareForm.tsx";
import { CustomerPage } from "../../../../src/ui/features/compare/CustomerPage.tsx";
import { VariantList } from "../../../../src/ui/features/variants/VariantList.tsx";
import { sidesOf, useCompared } from "../../../../src/ui/kit/asked/compared.ts";

const app = () => useApp.getState();

function show(children: ReactNode) {
  return render(<Tooltip.Provider>{children}</Tooltip.Provider>);
}

function example(key: string) {
  const found = EXAMPLES.find((e) => e.key === key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
}

/** "As built" with the universal converter, "Plan A" with a wideband one in its place. */
function planWideband() {
  show(<VariantList />);
  fireEvent.click(screen.getByRole("button", { name: "Add" }));
  cleanup();
  const { design, change } = app();
  const lnb = design.parts.find((p) => p.kind.startsWith("lnb-"))?.id ?? "";
  expect(change(replaceKind(design, lnb, "lnb-wideband"))).toBe(true);
}

beforeEach(() => {
  app().openDesign(example("house-universal"));
  useCompared.setState({ before: null, after: null });
});
afterEach(cleanup);

describe("the list of variants", () => {
  test("copies the one at work under a name that is free, and one undo takes it back", () => {
    const before = app().design;
    show(<VariantList />);
    fireEvent.click(screen.getByRole("button", { name: "Add" }));
    expect(variantNames(app().design)).toEqual(["As built", "Plan A"]);
    expect(activeName(app().design)).toBe("Plan A");
    expect(screen.getByRole("textbox")).toHaveProperty("value", "Plan B");
    app().undo();
    expect(app().design).toBe(before);
  });

  test("says why a name is refused and changes nothing", () => {
    show(<VariantList />);
    const before = app().design;
    fireEvent.change(screen.getByRole("textbox"), { target: { value: "As built" } });
    fireEvent.click(screen.getByRole("button", { name: "Add" }));
    expect(screen.getByRole("status").textContent).toMatch(/already/);
    expect(app().design).toBe(before);
  });

  test("goes from one to the other with the canvas, and tells how each stands", async () => {
    planWideband();
    show(<VariantList />);
    expect(await screen.findByText(/active now · .* receivers work · \d+ errors?$/)).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: /^As built/ }));
    expect(app().evaluation.design).toBe(app().design);
    expect(app().report.findings.some((f) => f.severity === "error")).toBe(false);
    expect(screen.getByRole("button", { name: /^As built/ }).getAttribute("aria-current")).toBe("true");
  });

  test("renames and deletes, with the way back", () => {
    planWideband();
    show(<VariantList />);
    fireEvent.click(screen.getByRole("button", { name: "Rename “Plan A”" }));
    const field = screen.getByRole("textbox", { name: "New name of “Plan A”" });
    fireEvent.change(field, { target: { value: "Wideband" } });
    fireEvent.submit(field);
    expect(activeName(app().design)).toBe("Wideband");
    fireEvent.click(screen.getByRole("button", { name: "Delete “Wideband”" }));
    expect(variantNames(app().design)).toEqual(["As built"]);
    expect(screen.getByRole("button", { name: "Delete “As built”" })).toHaveProperty("disabled", true);
    fireEvent.click(within(screen.getByRole("status")).getByRole("button", { name: "Undo" }));
    expect(variantNames(app().design)).toEqual(["As built", "Wideband"]);
  });
});

describe("before and after", () => {
  test("sends whoever has one variant to where a second is made", () => {
    show(<CompareForm />);
    expect(screen.getByRole("button", { name: /Copy it/ })).toBeTruthy();
  });

  test("takes the first variant for before and the one at work for after, and forgets names that are gone", () => {
    planWideband();
    const { design } = app();
    expect(sidesOf(design, { before: null, after: null })).toEqual({
      before: { name: "As built" },
      after: { name: "Plan A" },
    });
    expect(sidesOf(design, { before: { name: "gone" }, after: { name: "As built" } })).toEqual({
      before: { name: "Plan A" },
      after: { name: "As built" },
    });
  });

  // Common practice, no source: a wideband feed lies on top of UHF television on a shared cable.
  test("names what is to be done, who loses what, and what it costs", async () => {
    planWideband();
    show(<CompareForm />);
    await screen.findByText(/Replace “.*” with: Wideband LNB/);
    const table = screen.getByRole("table");
    expect(within(table).getByRole("rowheader", { name: /^TV living room\s*loses/ })).toBeTruthy();
    expect(within(table).queryByText("DAB radio living room")).toBeNull();
    fireEvent.click(screen.getByRole("button", { name: /unchanged place/ }));
    expect(within(table).getByText("DAB radio living room")).toBeTruthy();
    expect(screen.getByText(/no new cable · about 40 minutes · parts 30/)).toBeTruthy();
  });

  test("fits on a page in plain words: no decibels, no rule names", () => {
    const before = siteOf(example("house-wideband-fails"));
    // A dish so small that the weakest transponders have next to nothing to spare.
    const planned = setOption(example("house-stacked"), "dish", "diameterM", 0.45);
    if (!planned.ok) throw new Error(planned.reason);
    const after = siteOf(planned.design);
    const comparison = compareSites(before, after, PLACEHOLDER_PRICES);
    const { container } = render(
      <CustomerPage compared={{ comparison, before, after, names: ["As built", "Plan A"] }} />,
    );
    const words = [...container.querySelectorAll("p, table")].map((e) => e.textContent).join(" ");
    expect(words).toMatch(/Before \(As built\): 3 of 7 receivers work\./);
    expect(words).toMatch(/After \(Plan A\): all \d receivers work\./);
    expect(words).toMatch(/Gets all of the satellite channels, but only just/);
    expect(words).not.toMatch(/\bdB|C\/N|MHz|input|transponder/);
    expect(container.querySelectorAll("svg.print-drawing")).toHaveLength(2);
  });
});
