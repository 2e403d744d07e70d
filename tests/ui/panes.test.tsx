// @vitest-environment happy-dom
/** The panes on a real design, as a user meets them. Roles and states are those of WAI-ARIA 1.2. */

import { cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { EMPTY_DESIGN } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import type { Finding } from "../../src/findings/finding.ts";
import { messageOf } from "../../src/sentences/finding.ts";
import { useApp } from "../../src/store/app.ts";
import { ChainPane } from "../../src/ui/features/chain/ChainPane.tsx";
import { Inspector } from "../../src/ui/features/inspector/Inspector.tsx";
import { VerdictPane } from "../../src/ui/features/verdict/VerdictPane.tsx";
import { limitWords } from "../../src/ui/kit/told/limitWords.ts";
import { CrashScreen } from "../../src/ui/shell/CrashScreen.tsx";

function show(children: ReactNode) {
  return render(<Tooltip.Provider>{children}</Tooltip.Provider>);
}

function open(key: string) {
  const example = EXAMPLES.find((e) => e.key === key);
  if (!example) throw new Error(`no example ${key}`);
  useApp.getState().openDesign(example.load());
}

const partOfKind = (kind: string) => {
  const part = useApp.getState().design.parts.find((p) => p.kind === kind);
  if (!part) throw new Error(`no part of kind ${kind}`);
  return part;
};

beforeEach(() => open("house-universal"));
afterEach(cleanup);

describe("the inspector", () => {
  const length = () => screen.getByRole("spinbutton", { name: "Length" });

  test("keeps the last good value and says why when a number is out of range", () => {
    const cable = partOfKind("cable");
    useApp.getState().select({ parts: [cable.id] });
    show(<Inspector />);
    fireEvent.change(length(), { target: { value: "-5" } });
    expect(useApp.getState().design.parts.find((p) => p.id === cable.id)?.options).toEqual(cable.options);
    expect(length().getAttribute("aria-invalid")).toBe("true");
    expect(screen.getByRole("alert").textContent).toMatch(
      /Length is −5 m; allowed is 0\.1 to 500 m\. Not taken yet: still /,
    );
    fireEvent.blur(length());
    expect(length()).toHaveProperty("value", String(cable.options.lengthM));
  });

  test("takes a decimal comma, and one undo takes the whole typing back", () => {
    const cable = partOfKind("cable");
    useApp.getState().select({ parts: [cable.id] });
    show(<Inspector />);
    for (const value of ["3", "33", "33,", "33,5"]) fireEvent.change(length(), { target: { value } });
    const now = () => useApp.getState().design.parts.find((p) => p.id === cable.id)?.options.lengthM;
    expect(now()).toBe(33.5);
    useApp.getState().undo();
    expect(now()).toBe(cable.options.lengthM);
  });

  test("puts what a receiver asks for first, and a press changes what arrives", () => {
    const receiver = partOfKind("receiver-sat");
    useApp.getState().select({ parts: [receiver.id] });
    show(<Inspector />);
    const asks = screen.getByRole("region", { name: "At this moment" });
    const other = receiver.options.polarisation === "V" ? /horizontal/i : /vertical/i;
    const before = useApp.getState().evaluation.record(receiver.id)?.inputs;
    fireEvent.click(within(asks).getByRole("radio", { name: other }));
    expect(useApp.getState().evaluation.record(receiver.id)?.inputs).not.toBe(before);
  });

  test("refuses an empty name at the field and keeps the old one", () => {
    const cable = partOfKind("cable");
    useApp.getState().select({ parts: [cable.id] });
    show(<Inspector />);
    fireEvent.change(screen.getByRole("textbox", { name: "Name of this part" }), { target: { value: " " } });
    expect(screen.getByRole("alert").textContent).toMatch(/name/);
    expect(useApp.getState().design.parts.find((p) => p.id === cable.id)?.label).toBe(cable.label);
  });

  test("counts what is selected when it is more than one thing", () => {
    const [a, b] = useApp.getState().design.parts;
    useApp.getState().select({ parts: [a?.id ?? "", b?.id ?? ""] });
    show(<Inspector />);
    expect(screen.getByRole("heading").textContent).toBe("2 parts selected");
  });
});

describe("the verdict pane", () => {
  test("invites on an empty design", () => {
    useApp.getState().openDesign({ ...EMPTY_DESIGN });
    show(<VerdictPane />);
    expect(screen.getByRole("heading", { name: "No receiver yet" })).toBeTruthy();
  });

  test("lists every receiver and outlet of the report, and a press selects and frames it", () => {
    open("house-wideband-fails");
    show(<VerdictPane />);
    const { verdicts } = useApp.getState().report;
    const rows = screen.getAllByRole("button", { name: /^(Works|Fails): / });
    expect(rows).toHaveLength(verdicts.length);
    const failing = screen.getAllByRole("button", { name: /^Fails: / });
    expect(failing).toHaveLength(verdicts.filter((v) => v.state === "fails").length);
    const [first] = failing;
    if (first) fireEvent.click(first);
    const { selection, framing } = useApp.getState();
    expect(selection.parts).toHaveLength(1);
    expect(framing?.parts).toEqual(selection.parts);
  });

  test("a press on a finding selects its culprit first", () => {
    open("house-wideband-fails");
    show(<VerdictPane />);
    const { evaluation, report } = useApp.getState();
    const finding = report.findings[0];
    if (!finding) throw new Error("the failing house has findings");
    const message = messageOf(finding, evaluation);
    const [button] = screen.getAllByRole("button", { name: (name) => name.startsWith(message) });
    if (button) fireEvent.click(button);
    expect(useApp.getState().selection.parts).toEqual(finding.parts);
  });
});

function Breaks({ fault }: { readonly fault: { isThere: boolean } }) {
  if (fault.isThere) throw new Error("a strip broke");
  return <p>drawn</p>;
}

describe("a fault in drawing", () => {
  test("leaves the design downloadable and can be got over", () => {
    // React reports the caught fault on the console, which would only clutter the output here.
    const quiet = vi.spyOn(console, "error").mockImplementation(() => undefined);
    const fault = { isThere: true };
    show(
      <CrashScreen>
        <Breaks fault={fault} />
      </CrashScreen>,
    );
    expect(screen.getByRole("alert").textContent).toContain("a strip broke");
    expect(screen.getByRole("button", { name: "Download the file" })).toBeTruthy();
    expect(useApp.getState().design.parts.length).toBeGreaterThan(0);
    fault.isThere = false;
    fireEvent.click(screen.getByRole("button", { name: "Try again" }));
    expect(screen.getByText("drawn")).toBeTruthy();
    quiet.mockRestore();
  });
});

describe("figures of a finding", () => {
  const base = {
    id: "loop|p",
    rule: "loop",
    severity: "error",
    at: { part: "p" },
    parts: ["p"],
    wires: [],
    facts: {},
  } as const;
  test.each([
    {
      facts: { value: 104.2, limit: 95, unit: "dBµV", source: "EN 60728-3" },
      words: "104.2 dBµV · limit 95 dBµV · EN 60728-3",
    },
    { facts: { value: 1, limit: 6, unit: "carriers" }, words: "1 of 6 carriers" },
    { facts: { value: 3, limit: 1, unit: "receivers" }, words: "3 receivers · limit 1" },
    { facts: { value: 17, limit: 0, unit: "transponders" }, words: "" },
    { facts: {}, words: "" },
  ])("read “$words”", ({ facts, words }) => {
    expect(limitWords({ ...base, ...facts } as Finding)).toBe(words);
  });
});

describe("the chain", () => {
  test("is a tree that the arrow keys walk and Enter selects from", () => {
    show(<ChainPane />);
    const items = screen.getAllByRole("treeitem");
    expect(items.length).toBeGreaterThan(useApp.getState().design.parts.length);
    expect(items.filter((i) => i.tabIndex === 0)).toHaveLength(1);
    items[0]?.focus();
    fireEvent.keyDown(items[0] ?? document.body, { key: "ArrowDown" });
    expect(document.activeElement).toBe(items[1]);
    fireEvent.keyDown(items[1] ?? document.body, { key: "Enter" });
    expect(useApp.getState().selection.wires).toHaveLength(1);
  });

  test("shows what was selected elsewhere", () => {
    const [part] = useApp.getState().design.parts;
    useApp.getState().select({ parts: [part?.id ?? ""] });
    show(<ChainPane />);
    const selected = screen.getAllByRole("treeitem", { selected: true });
    expect(selected[0]?.textContent).toContain(part?.label);
  });
});
