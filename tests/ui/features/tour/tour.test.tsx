// @vitest-environment happy-dom
/** The first steps of a newcomer: examples by what they teach, and the tour from a red tile to a cure. */
import { readdirSync } from "node:fs";
import { cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { done } from "../../../../src/design/edits/edit.ts";
import { EXAMPLE_GROUPS, EXAMPLES, exampleOf } from "../../../../src/design/examples.ts";
import { useApp } from "../../../../src/store/app.ts";
import { FirstSteps } from "../../../../src/ui/features/tour/FirstSteps.tsx";
import { Tour } from "../../../../src/ui/features/tour/Tour.tsx";
import { TOUR_EXAMPLE, tourFacts, tourWords } from "../../../../src/ui/features/tour/tourSteps.ts";
import { useTour } from "../../../../src/ui/kit/asked/tour.ts";

const FAILING = exampleOf(TOUR_EXAMPLE)?.load();
const SOUND = exampleOf("house-universal")?.load();

beforeEach(() => {
  if (FAILING) useApp.getState().openDesign(FAILING);
});

afterEach(() => {
  cleanup();
  useTour.setState({ step: null, opener: null });
});

/** Buttons with hints need a place to hang them. */
const show = (element: ReactNode) => render(<Tooltip.Provider>{element}</Tooltip.Provider>);

test("the first steps show every example once, under what it teaches", () => {
  show(<FirstSteps openExample={vi.fn(async () => true)} />);
  const shown = screen.getAllByRole("definition").map((each) => each.textContent);
  // As many as there are files of examples, each with a title of its own.
  expect(shown).toHaveLength(readdirSync("src/design/examples").length);
  expect(new Set(shown)).toEqual(new Set(EXAMPLES.map(({ title }) => title)));
  expect(screen.getAllByRole("term").map((each) => each.textContent)).toEqual(
    EXAMPLE_GROUPS.map(({ teaches }) => teaches),
  );
});

test("the first steps open an example, or begin the tour", () => {
  const openExample = vi.fn(async () => true);
  show(<FirstSteps openExample={openExample} />);
  fireEvent.click(screen.getByRole("button", { name: SOUND?.title ?? "" }));
  expect(openExample).toHaveBeenCalledWith("house-universal");
  fireEvent.click(screen.getByRole("button", { name: /^Take the tour/ }));
  expect(useTour.getState().step).toBe(0);
});

describe("the tour", () => {
  const actions = () => ({
    openExample: vi.fn(async () => true),
    openNew: vi.fn(async () => {}),
    applyCure: vi.fn(),
  });
  const region = () => within(screen.getByRole("region", { name: "Tour" }));

  test("points at a receiver that fails, and at what makes it fail further up", () => {
    const { evaluation, report } = useApp.getState();
    const { receiver, culprit, way } = tourFacts(evaluation, report);
    // A wideband LNB on a cable that TV shares: whoever watches TV there suffers, and the LNB is to blame.
    expect(receiver).toBe("tv1");
    expect(culprit).toBe("lnb");
    expect([way[0], way.at(-1)]).toEqual(["tv1", "lnb"]);
  });

  test("has nothing to point at where all is well, and still says something", () => {
    if (SOUND) useApp.getState().openDesign(SOUND);
    const { evaluation, report, design } = useApp.getState();
    const facts = tourFacts(evaluation, report);
    expect(facts).toEqual({ receiver: null, culprit: null, way: [] });
    expect(tourWords("done", facts, { design, report }).text).toMatch(/^All 7 receivers work\./);
  });

  test("opens its example, goes on and back, and ends with Escape", () => {
    const given = actions();
    show(<Tour {...given} />);
    expect(screen.queryByRole("region", { name: "Tour" })).toBeNull();
    useTour.setState({ step: 0 });
    cleanup();
    show(<Tour {...given} />);
    expect(given.openExample).toHaveBeenCalledWith(TOUR_EXAMPLE);
    fireEvent.click(region().getByRole("button", { name: "Next" }));
    expect(region().getByText("2 of 6")).toBeTruthy();
    fireEvent.click(region().getByRole("button", { name: "Back" }));
    expect(region().getByText("1 of 6")).toBeTruthy();
    fireEvent.keyDown(screen.getByRole("region", { name: "Tour" }), { key: "Escape" });
    expect(screen.queryByRole("region", { name: "Tour" })).toBeNull();
  });

  test("comes to its end as soon as a cure is applied, by whatever hand", () => {
    useTour.setState({ step: 4 });
    show(<Tour {...actions()} />);
    expect(region().getByText("5 of 6")).toBeTruthy();
    if (SOUND) useApp.getState().change(done(SOUND));
    cleanup();
    show(<Tour {...actions()} />);
    expect(region().getByText("6 of 6")).toBeTruthy();
    expect(region().getByRole("button", { name: "New design" })).toBeTruthy();
  });
});
