// @vitest-environment happy-dom
/** Cures as a user meets them. Roles and states are those of WAI-ARIA 1.2; the rest is our own behaviour. */
import { cleanup, fireEvent, render, screen, waitFor } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { useApp } from "../../../../src/store/app.ts";
import { useCures } from "../../../../src/store/cures.ts";
import { boxOf } from "../../../../src/ui/canvas/boxes.ts";
import { overlaps } from "../../../../src/ui/canvas/layout.ts";
import { PreviewBar } from "../../../../src/ui/canvas/preview/PreviewBar.tsx";
import { proposalDesign } from "../../../../src/ui/features/cures/actions.ts";
import { CuresPane } from "../../../../src/ui/features/cures/CuresPane.tsx";
import { SwapSection } from "../../../../src/ui/features/swap/SwapSection.tsx";
import { askSwap } from "../../../../src/ui/features/swap/swapState.ts";
import { costWords, money, workTimeWords } from "../../../../src/ui/kit/told/costWords.ts";

const app = () => useApp.getState();
const errors = () => app().report.findings.filter((f) => f.severity === "error").length;

function show(children: ReactNode) {
  return render(<Tooltip.Provider>{children}</Tooltip.Provider>);
}

function open(key: string) {
  const example = EXAMPLES.find((e) => e.key === key);
  if (!example) throw new Error(`no example ${key}`);
  app().openDesign(example.load());
}

const found = () => screen.findAllByRole("button", { name: /^Apply:/ }, { timeout: 15_000 });
const searched = () =>
  waitFor(() => expect(useCures.getState().status).toBe("done"), { timeout: 15_000, interval: 20 });

beforeEach(() => open("house-wideband-fails"));
afterEach(() => {
  cleanup();
  useCures.getState().clear();
  askSwap(null);
});

describe("the pane of cures", () => {
  test("says that there is nothing to cure where nothing is wrong", () => {
    open("house-universal");
    show(<CuresPane />);
    expect(screen.getByRole("heading").textContent).toMatch(/Nothing is wrong/);
    expect(screen.queryByRole("button", { name: "Find cures" })).toBeNull();
  });

  test("reaches a working design from the failing one by one press, and undo takes it back whole", async () => {
    show(<CuresPane />);
    const before = app().design;
    expect(errors()).toBeGreaterThan(0);
    fireEvent.click(screen.getByRole("button", { name: "Find cures" }));
    await screen.findByRole("button", { name: "Stop" });
    const [best] = await found();
    await searched();
    if (best) fireEvent.click(screen.getAllByRole("button", { name: /^Apply:/ })[0] ?? best);
    expect(errors()).toBe(0);
    expect(
      app()
        .report.verdicts.filter((v) => v.role === "receiver")
        .every((v) => v.state !== "fails"),
    ).toBe(true);
    expect(screen.getByRole("region", { name: "After the change" }).textContent).toMatch(
      /Nothing is wrong any more/,
    );
    fireEvent.click(screen.getByRole("button", { name: "Undo the last change" }));
    expect(app().design).toBe(before);
  });

  test("previews one proposal at a time and leaves the design alone", async () => {
    show(
      <>
        <PreviewBar />
        <CuresPane />
      </>,
    );
    const before = app().design;
    fireEvent.click(screen.getByRole("button", { name: "Find cures" }));
    await found();
    await searched();
    const [first, second] = screen.getAllByRole("button", { name: /^Preview:/ });
    if (!first || !second) throw new Error("fewer than two proposals");
    fireEvent.click(first);
    expect(first.getAttribute("aria-pressed")).toBe("true");
    fireEvent.click(second);
    expect(first.getAttribute("aria-pressed")).toBe("false");
    const bar = screen.getByRole("region", { name: "Preview" });
    expect(bar.textContent).toMatch(/nothing is changed yet/);
    expect(app().design).toBe(before);
    // The focus is still in the pane: the key works from there as well.
    fireEvent.keyDown(second, { key: "Escape" });
    expect(app().preview).toBeNull();
    expect(screen.queryByRole("region", { name: "Preview" })).toBeNull();
  });

  test("gives every new card room of its own", async () => {
    show(<CuresPane />);
    fireEvent.click(screen.getByRole("button", { name: "Find cures" }));
    await found();
    await searched();
    const old = new Set(app().design.parts.map((p) => p.id));
    for (const proposal of useCures.getState().proposals) {
      const proposed = proposalDesign(proposal);
      const { parts } = proposed;
      for (const part of parts.filter((p) => !old.has(p.id)))
        for (const other of parts)
          if (other !== part)
            expect(
              overlaps(boxOf(proposed, part), boxOf(proposed, other)),
              `${part.label} on ${other.label}`,
            ).toBe(false);
    }
  });

  test("shows nothing of a search whose design has gone on", async () => {
    show(<CuresPane />);
    fireEvent.click(screen.getByRole("button", { name: "Find cures" }));
    await found();
    await searched();
    const { design, change } = app();
    change({ ok: true, design: { ...design, title: "Later" }, notes: [] });
    await screen.findByText(/The design has changed/);
    expect(screen.queryByRole("button", { name: /^Apply:/ })).toBeNull();
  });
});

describe("what breaks if a part is swapped", () => {
  const converter = () => app().design.parts.find((p) => p.kind.startsWith("lnb-"))?.id ?? "";

  // Common practice, no source: a wideband feed starts at some 300 MHz, on top of UHF television on a shared
  // cable, and a receiver for a switched output cannot use it.
  test("names who loses, and changes nothing", async () => {
    open("house-universal");
    const { design } = app();
    askSwap({ part: converter(), kind: "lnb-wideband" });
    show(<SwapSection part={converter()} />);
    await screen.findByText(/no longer work/);
    const losers = screen.getAllByRole("listitem").filter((li) => /loses/.test(li.textContent ?? ""));
    expect(losers.some((li) => /^TV living room/.test(li.textContent ?? ""))).toBe(true);
    expect(losers.some((li) => /^Satellite receiver living room/.test(li.textContent ?? ""))).toBe(true);
    expect(app().design).toBe(design);
    fireEvent.click(screen.getByRole("button", { name: "Swap" }));
    expect(errors()).toBeGreaterThan(0);
    app().undo();
    expect(app().design).toBe(design);
  });

  test("is cured without swapping back", async () => {
    open("house-universal");
    const part = converter();
    askSwap({ part, kind: "lnb-wideband" });
    show(<SwapSection part={part} />);
    fireEvent.click(await screen.findByRole("button", { name: "Find cures for it" }));
    await searched();
    const { proposals } = useCures.getState();
    expect(proposals.length).toBeGreaterThan(0);
    for (const { design } of proposals)
      expect(design.parts.find((p) => p.id === part)?.kind).toBe("lnb-wideband");
  });
});

describe("the words of a cost", () => {
  test.each([
    {
      name: "nothing at all",
      cost: { newCables: 0, workMinutes: 0, partsPrice: 0 },
      words: "no new cable · no work on site · no parts to buy",
    },
    {
      name: "a knob",
      cost: { newCables: 0, workMinutes: 5, partsPrice: 0 },
      words: "no new cable · about 5 minutes · no parts to buy",
    },
    {
      name: "two cables",
      cost: { newCables: 2, workMinutes: 91, partsPrice: 119.6 },
      words: "2 new cables · about 90 minutes · parts 120 EUR",
    },
    {
      name: "a day",
      cost: { newCables: 1, workMinutes: 470, partsPrice: 3.5 },
      words: "1 new cable · about 8 hours · parts 3.50 EUR",
    },
  ])("$name", ({ cost, words }) => expect(costWords(cost, " EUR ")).toBe(words));

  test("leave a currency out where none was given", () => {
    expect(money(12, "")).toBe("12");
    expect(workTimeWords(150)).toBe("about 2.5 hours");
  });
});
