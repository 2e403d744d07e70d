// @vitest-environment happy-dom
/** The canvas as assistive technology and keyboards meet it. Names by reference as in WAI-ARIA 1.2. */
import { act, cleanup, fireEvent, render, screen } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { EMPTY_DESIGN, wireId } from "../../../src/design/design.ts";
import { EXAMPLES, exampleOf } from "../../../src/design/examples.ts";
import { useApp } from "../../../src/store/app.ts";
import { Canvas } from "../../../src/ui/canvas/Canvas.tsx";
import { setCanvas } from "../../../src/ui/canvas/state.ts";
import { canvasView } from "../../../src/ui/canvas/view.ts";
import { useCommandKeys } from "../../../src/ui/shell/keys.ts";
import { largeDesign } from "../../bench/largeDesign.ts";

const app = () => useApp.getState();

function show(key: string): void {
  const example = EXAMPLES.find((e) => e.key === key);
  if (!example) throw new Error(`no example ${key}`);
  app().openDesign(example.load());
  mount();
}

function mount(empty?: ReactNode): void {
  render(
    <Tooltip.Provider>
      <CanvasWithKeys empty={empty} />
    </Tooltip.Provider>,
  );
}

/** The keys are bound by the page around the canvas. */
function CanvasWithKeys({ empty }: { readonly empty: ReactNode }) {
  useCommandKeys();
  return <Canvas empty={empty} />;
}

/** The accessible name that `aria-labelledby` gives: the words of all elements it names, in order. */
function nameOf(element: Element): string {
  const ids = element.getAttribute("aria-labelledby")?.split(" ") ?? [];
  return ids
    .map((id) => document.getElementById(id)?.textContent ?? "")
    .filter((words) => words !== "")
    .join(" ");
}

const cards = () => [...document.querySelectorAll(".react-flow__node")];
const wires = () => [...document.querySelectorAll(".react-flow__edge")];

beforeEach(() => setCanvas({ dialog: null, selecting: false, mapOpen: false }));
afterEach(cleanup);

describe("the canvas", () => {
  test("names every card that it shows after its part", () => {
    show("house-universal");
    expect(cards().length).toBeGreaterThan(5);
    for (const card of cards()) {
      const part = app().design.parts.find((p) => p.id === card.getAttribute("data-id"));
      expect(nameOf(card)).toMatch(new RegExp(`^${part?.label}`));
    }
  });

  test("names every wire by its ends and what is on it", () => {
    show("house-universal");
    expect(wires().length).toBeGreaterThan(5);
    for (const wire of wires())
      expect(nameOf(wire)).toMatch(/^From .+ to .+: .*\d+ ?(–|to) ?\d+ dBµV|: .*dBµV/);
  });

  test("calls cards and wires the same from near and from afar", () => {
    show("house-wideband-fails");
    const names = () => [...cards(), ...wires()].map(nameOf);
    act(() => setCanvas({ detail: "near" }));
    const near = names();
    for (const detail of ["close", "mid", "small"] as const) {
      act(() => setCanvas({ detail }));
      expect(names()).toEqual(near);
    }
  });

  test("tells a collision in words, and by a mark beside the colour", () => {
    show("house-wideband-fails");
    const wire = app().design.wires.find((w) => {
      const bands = app().evaluation.spectrum(w).bands;
      return bands.length > 3 && w.from[0] !== "dish";
    });
    if (!wire) throw new Error("no such wire");
    act(() => app().frame({ wires: [wireId(wire)] }));
    const hit = wires().filter((w) => w.querySelector('[data-worst="hit"]'));
    expect(hit.length).toBeGreaterThan(0);
    for (const w of hit) expect(nameOf(w)).toMatch(/carriers are lost/);
    const strips = [...document.querySelectorAll('.docked-strip .strip[data-worst="hit"]')];
    expect(strips.length).toBeGreaterThan(0);
    for (const strip of strips) expect(strip.querySelector(".strip-lost-cap")).not.toBeNull();
  });

  test("shows the first steps on an empty design only", () => {
    app().openDesign(EMPTY_DESIGN);
    mount(<h2>First steps</h2>);
    expect(screen.getByRole("heading", { name: "First steps" })).toBeDefined();
    act(() => void app().openDesign(exampleOf("long-steel-drop")?.load() ?? EMPTY_DESIGN));
    expect(screen.queryByRole("heading", { name: "First steps" })).toBeNull();
  });

  test("shows a thousand parts as a plan without a single card", () => {
    app().openDesign(largeDesign(1000));
    mount();
    expect(cards()).toHaveLength(0);
    expect(document.querySelectorAll(".plan-layer path").length).toBeLessThan(40);
    expect(document.querySelector(".plan-layer .plan-card")?.getAttribute("d")).toMatch(/^M-?\d/);
  });

  test("hands its view to commands while it is there, and takes it back", () => {
    show("house-universal");
    expect(canvasView()).not.toBeNull();
    cleanup();
    expect(canvasView()).toBeNull();
  });
});

describe("keys", () => {
  beforeEach(() => show("house-universal"));
  const count = () => app().design.parts.length;
  const canvas = () => screen.getByRole("group", { name: "Canvas" });

  test("delete what is selected while the canvas has the focus, and nothing while nobody has it", () => {
    const before = count();
    act(() => app().select({ parts: ["amp"] }));
    for (const key of ["Delete", "Backspace"]) fireEvent.keyDown(document.body, { key, code: key });
    expect(count()).toBe(before);
    fireEvent.keyDown(canvas(), { key: "Delete", code: "Delete" });
    expect(count()).toBe(before - 1);
    fireEvent.keyDown(document.body, { key: "z", code: "KeyZ", ctrlKey: true });
    expect(count()).toBe(before);
  });

  test("belong to a field while one types in it", () => {
    const before = count();
    const field = document.body.appendChild(document.createElement("input"));
    act(() => app().select({ parts: ["amp"] }));
    fireEvent.keyDown(field, { key: "Delete", code: "Delete" });
    fireEvent.keyDown(field, { key: "d", code: "KeyD", ctrlKey: true });
    expect(count()).toBe(before);
    field.remove();
  });

  test("without a modifier do nothing while another pane has the focus", () => {
    const button = document.body.appendChild(document.createElement("button"));
    const before = count();
    act(() => app().select({ parts: ["amp"] }));
    fireEvent.keyDown(button, { key: "Delete", code: "Delete" });
    expect(count()).toBe(before);
    button.remove();
  });

  // What a form on the canvas did is one thing to its user: kept by Enter, gone by Escape.
  test("keep what the little form of a cable changed as one step, or give up all of it", () => {
    const before = app().design;
    const cable = before.parts.find((p) => p.kind === "cable");
    if (!cable) throw new Error("no cable");
    const steps = () => useApp.temporal.getState().pastStates.length;
    const options = () => app().design.parts.find((p) => p.id === cable.id)?.options;
    const grade = () => screen.getByRole("combobox", { name: "Grade" });
    const fill = () => {
      act(() => app().select({ parts: [cable.id] }));
      fireEvent.keyDown(canvas(), { key: "Enter", code: "Enter" });
      const length = screen.getByRole("spinbutton", { name: "Length" });
      fireEvent.change(length, { target: { value: "41" } });
      fireEvent.blur(length);
      fireEvent.change(grade(), { target: { value: "clad-0.8" } });
      expect(options()).toMatchObject({ lengthM: 41, grade: "clad-0.8" });
    };
    expect(steps()).toBe(0);
    fill();
    fireEvent.keyDown(grade(), { key: "Escape", code: "Escape" });
    expect(screen.queryByRole("combobox", { name: "Grade" })).toBeNull();
    expect(app().design).toBe(before);

    // Kept, both changes are one step.
    fill();
    fireEvent.click(screen.getByRole("button", { name: "Done" }));
    expect(steps()).toBe(1);
    act(() => app().undo());
    expect(app().design).toBe(before);
  });

  test("open the dialog that joins two ports", () => {
    const before = app().design.wires.length;
    act(() => app().select({ wires: ["amp.out>dip1.tv"] }));
    fireEvent.keyDown(canvas(), { key: "Delete", code: "Delete" });
    expect(app().design.wires).toHaveLength(before - 1);
    fireEvent.keyDown(canvas(), { key: "j", code: "KeyJ" });
    const search = screen.getByRole("combobox", { name: "Port to connect" });
    fireEvent.change(search, { target: { value: "loft amplifier" } });
    fireEvent.keyDown(search, { key: "Enter" });
    fireEvent.keyDown(screen.getByRole("combobox", { name: "Port to connect to" }), { key: "Enter" });
    expect(app().design.wires).toHaveLength(before);
  });
});
