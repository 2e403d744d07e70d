// @vitest-environment happy-dom
/** The rule book and the address that leads to a rule (query strings as in the WHATWG URL standard). */
import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../../../src/design/design.ts";
import { ruleBook } from "../../../../src/sentences/explain/ruleBook.ts";
import { useApp } from "../../../../src/store/app.ts";
import { RuleBook } from "../../../../src/ui/features/rulebook/RuleBook.tsx";
import {
  addressOfRule,
  openBookFromAddress,
  openRuleBook,
  ruleInAddress,
  useBook,
} from "../../../../src/ui/kit/asked/book.ts";
import { usePanes } from "../../../../src/ui/kit/panes.ts";

describe("the address of a rule", () => {
  const page = "https://example.org/app/?example=house-universal#d1.abc";

  test("asks for the rule and keeps whatever else it asks for", () => {
    const address = addressOfRule(page, "band-cut");
    expect(new URL(address).searchParams.get("rules")).toBe("band-cut");
    expect(new URL(address).searchParams.get("example")).toBe("house-universal");
    expect(new URL(address).hash).toBe("#d1.abc");
    expect(ruleInAddress(address)).toBe("band-cut");
    expect(addressOfRule(address, null)).toBe(page);
  });

  test.each([
    { name: "nothing is asked", address: "https://example.org/", rule: null },
    { name: "the book as a whole", address: "https://example.org/?rules", rule: "" },
    { name: "a rule in foreign letters", address: "https://example.org/?rules=%E2%9C%97%20x", rule: "✗ x" },
    { name: "not an address at all", address: "::", rule: null },
  ])("is read: $name", ({ address, rule }) => {
    expect(ruleInAddress(address)).toBe(rule);
  });
});

describe("the rule book", () => {
  const show = (rule: string) => {
    act(() => openRuleBook(rule));
    render(
      <Tooltip.Provider>
        <RuleBook />
      </Tooltip.Provider>,
    );
  };

  beforeEach(() => act(() => useApp.getState().openDesign({ ...EMPTY_DESIGN })));
  afterEach(() => {
    cleanup();
    act(() => usePanes.setState({ dialog: null }));
    window.history.replaceState(null, "", "/");
  });

  test.each(ruleBook().map(({ id, title }) => ({ id, title })))(
    "has a page with an example where the rule speaks: $id",
    ({ id, title }) => {
      show(id);
      const page = screen.getByRole("article", { name: title });
      expect(within(page).getByRole("heading", { name: /^An example that triggers it: / })).toBeTruthy();
      expect(within(page).getByRole("heading", { name: /^An example that does not: / })).toBeTruthy();
      // Only an example in which the rule has found something is explained.
      expect(within(page).getByRole("heading", { name: "For the customer" })).toBeTruthy();
      expect(within(page).getAllByRole("img").length).toBeGreaterThanOrEqual(2);
    },
  );

  test("turns to another rule by its title, and the address follows", () => {
    show("band-cut");
    expect(ruleInAddress(window.location.href)).toBe("band-cut");
    fireEvent.click(screen.getByRole("button", { name: "Too much slope" }));
    expect(screen.getByRole("article", { name: "Too much slope" })).toBeTruthy();
    expect(screen.getByRole("button", { name: "Too much slope", current: "page" })).toBeTruthy();
    expect(ruleInAddress(window.location.href)).toBe("slope");
    cleanup();
    expect(ruleInAddress(window.location.href)).toBeNull();
  });

  test("says so when an address names no rule, and shows the first", () => {
    show("no-such-rule");
    expect(screen.getByText(/There is no rule “no-such-rule”/)).toBeTruthy();
    expect(screen.getByRole("article", { name: ruleBook()[0]?.title ?? "" })).toBeTruthy();
  });

  test("opens from the address of the page", () => {
    window.history.replaceState(null, "", "/?rules=overload");
    act(openBookFromAddress);
    expect(usePanes.getState().dialog).toBe("rules");
    expect(useBook.getState().rule).toBe("overload");
  });

  test("opens an example as a design of its own and shows what the rule says of it", async () => {
    show("level-limits");
    const [open] = screen.getAllByRole("button", { name: "Open this example as a design of its own" });
    if (!open) throw new Error("no example to open");
    await act(async () => fireEvent.click(open));
    const { design, report } = useApp.getState();
    expect(design.parts.length).toBeGreaterThan(0);
    expect(report.findings.some((f) => f.rule === "level-limits")).toBe(true);
    expect(usePanes.getState().dialog).toBeNull();
    expect(usePanes.getState().side).toBe("verdict");
  });
});
