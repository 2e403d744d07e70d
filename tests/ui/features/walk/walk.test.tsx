// @vitest-environment happy-dom
/** A walk as a user makes it. Roles and states are those of WAI-ARIA 1.2. */
import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { removeParts } from "../../../../src/design/edits/remove.ts";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { useApp } from "../../../../src/store/app.ts";
import { goToPart } from "../../../../src/ui/features/walk/steps.ts";
import { shownWalk } from "../../../../src/ui/features/walk/walk.ts";
import { walkPlaces } from "../../../../src/ui/kit/asked/places.ts";
import { currentWalk, endWalk, startWalk } from "../../../../src/ui/kit/asked/walking.ts";
import { usePanes } from "../../../../src/ui/kit/panes.ts";
import { runCommand } from "../../../../src/ui/shell/commands.ts";
import { LowerPane } from "../../../../src/ui/shell/LowerPane.tsx";

const app = () => useApp.getState();

function open(key: string) {
  const example = EXAMPLES.find((e) => e.key === key);
  if (!example) throw new Error(`no example ${key}`);
  act(() => app().openDesign(example.load()));
}

const placeOf = (label: string) => {
  const place = walkPlaces(app().evaluation).find((p) => p.label === label);
  if (!place) throw new Error(`no place ${label}`);
  return place;
};
const shown = () => {
  const walking = currentWalk();
  if (!walking) throw new Error("nobody walks");
  return shownWalk(app().evaluation, walking);
};
const pane = () => screen.getByRole("region", { name: "Walk" });
const here = () => within(pane()).getByRole("row", { current: "step" });
const label = () => shown().route.stops[shown().stop]?.label;

beforeEach(() => {
  open("house-wideband-fails");
  render(
    <Tooltip.Provider>
      <LowerPane />
    </Tooltip.Provider>,
  );
});
afterEach(() => {
  act(endWalk);
  cleanup();
});

describe("the walk of a signal", () => {
  // Television and a wideband feed share frequencies from where they are brought together; common practice, no source.
  test("begins where the signal is lost, and says why", () => {
    act(() => startWalk(placeOf("TV living room")));
    expect(label()).toBe("Diplexer living room");
    expect(here().textContent).toContain("lost here");
    expect(pane().textContent).toMatch(/Step 3 of 6 .*Lost here: .*Satellite V/);
  });

  test("is stepped along by the arrow keys and stays at its ends", () => {
    act(() => startWalk(placeOf("TV living room")));
    fireEvent.keyDown(pane(), { key: "Home" });
    expect(label()).toBe("UHF aerial");
    fireEvent.keyDown(pane(), { key: "ArrowLeft" });
    expect(label()).toBe("UHF aerial");
    fireEvent.keyDown(pane(), { key: "ArrowRight" });
    expect(label()).toBe("Loft amplifier");
    fireEvent.keyDown(pane(), { key: "End" });
    expect(label()).toBe("TV living room");
    fireEvent.click(within(pane()).getByRole("button", { name: "One step towards the roof" }));
    expect(label()).toBe("Outlet living room");
  });

  test("goes to a part of the way that is pressed, and to no other", () => {
    act(() => startWalk(placeOf("TV living room")));
    fireEvent.click(within(pane()).getByRole("button", { name: "Drop living room" }));
    expect(label()).toBe("Drop living room");
    const idOf = (name: string) => app().design.parts.find((p) => p.label === name)?.id ?? "";
    act(() => {
      expect(goToPart(idOf("UHF aerial"))).toBe(true);
      expect(goToPart(idOf("FM aerial"))).toBe(false);
    });
    expect(label()).toBe("UHF aerial");
  });

  // Decibels add up: the level at the end is that of the source and all gains on the way.
  test("shows gains that add up to the level at the end", () => {
    act(() => startWalk(placeOf("TV bedroom 2")));
    const walk = shown();
    if (walk.view !== "signal" || !walk.way) throw new Error("no signal");
    const { steps, end } = walk.way;
    const sum = steps.reduce((db, s) => db + (s.gainDb ?? 0), steps[0]?.levelDbuv ?? 0);
    expect(sum).toBeCloseTo(end?.levelDbuv ?? Number.NaN, 6);
    expect(walk.route.wires).toHaveLength(walk.route.stops.length - 1);
  });

  test("follows another carrier that is added, and leaves it out again", () => {
    act(() => startWalk(placeOf("TV living room")));
    const further = within(pane()).getByRole("combobox", { name: "Another carrier" });
    const name = within(further).getAllByRole("option")[1]?.textContent?.split(" ")[0] ?? "";
    fireEvent.change(further, { target: { value: "0" } });
    const own = within(within(pane()).getByRole("group", { name: "Carriers" }));
    expect(own.getByRole("button", { pressed: true }).textContent).toContain(`${name}added`);
    fireEvent.click(own.getByRole("button", { name: `Leave out ${name}` }));
    expect(own.queryByText(name)).toBeNull();
  });

  test("turns to a service that the new place has when the place is changed", () => {
    act(() => startWalk(placeOf("TV living room")));
    const radio = placeOf("DAB radio living room");
    fireEvent.change(within(pane()).getByRole("combobox", { name: "To" }), { target: { value: radio.key } });
    expect(shown().walking.service).toBe("dab");
    expect(shown().route.trouble).toBeNull();
  });

  test("says that a place is gone when its part is deleted meanwhile", () => {
    const place = placeOf("TV living room");
    act(() => startWalk(place));
    act(() => app().change(removeParts(app().design, new Set([place.part]), new Set())));
    expect(within(pane()).getByRole("combobox", { name: "To" }).textContent).toContain("(gone)");
  });

  test("ends with Escape, and the focus goes back to where it began", () => {
    const button = document.createElement("button");
    document.body.append(button);
    button.focus();
    const { spectrumOpen } = usePanes.getState();
    act(() => startWalk(placeOf("TV living room")));
    fireEvent.keyDown(pane(), { key: "Escape" });
    expect(screen.queryByRole("region", { name: "Walk" })).toBeNull();
    expect(document.activeElement).toBe(button);
    expect(usePanes.getState().spectrumOpen).toBe(spectrumOpen);
    button.remove();
  });

  test("does not outlive the design that it was made through", () => {
    act(() => startWalk(placeOf("TV living room")));
    open("house-universal");
    expect(currentWalk()).toBeNull();
  });
});

describe("the walk of a supply", () => {
  beforeEach(() => open("long-steel-drop"));

  test("marks the converter that gets too few volts for horizontal", () => {
    act(() => runCommand("walk-supply"));
    const walk = shown();
    expect(walk.route.stops.map((s) => s.label)).toEqual(["Receiver", "Outlet", "Long drop", "LNB"]);
    // Above about 15 V a converter takes the request as horizontal: EN 61319-1, from memory.
    expect(walk.route.trouble?.mark).toBe("too low for H");
    expect(label()).toBe("LNB");
  });

  test("shows a drop that follows Ohm's law: volts lost are current times resistance", () => {
    act(() => runCommand("walk-supply"));
    const walk = shown();
    if (walk.view !== "supply") throw new Error("no supply");
    const drop = walk.branch.find((s) => s.ohms > 1);
    if (!drop) throw new Error("no resistance on the way");
    expect(drop.dropVolts).toBeCloseTo((drop.milliamps / 1000) * drop.ohms, 6);
  });

  test("is walked to the left, for on the canvas the roof is there", () => {
    act(() => runCommand("walk-supply"));
    fireEvent.keyDown(pane(), { key: "Home" });
    fireEvent.keyDown(pane(), { key: "ArrowLeft" });
    expect(label()).toBe("Outlet");
    fireEvent.keyDown(pane(), { key: "ArrowRight" });
    expect(label()).toBe("Receiver");
  });

  test("says at which switch a command is not done", () => {
    act(() => runCommand("walk-supply"));
    const commands = screen.getByRole("region", { name: "Commands" });
    expect(within(commands).getByRole("button").textContent).toMatch(/^Not done: .*LNB.*it understands V/);
  });

  test("says so where nothing gives a supply", () => {
    open("house-universal");
    act(() => startWalk(placeOf("TV bedroom 2"), { view: "supply" }));
    expect(pane().textContent).toContain("Nothing on this line gives a supply or a command.");
  });
});
