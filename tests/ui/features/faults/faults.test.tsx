// @vitest-environment happy-dom
/**
 * Faults as a user meets them. What a fault does is common practice, no source: an amplifier without mains starves
 * its rooms and leaves satellite alone; a plug that is off fails what hangs behind it. Roles as in WAI-ARIA 1.2.
 */
import { cleanup, fireEvent, render, screen, waitFor, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { EMPTY_DESIGN, wireId } from "../../../../src/design/design.ts";
import { exampleOf } from "../../../../src/design/examples.ts";
import { faults } from "../../../../src/remedies/faults/list.ts";
import { useApp } from "../../../../src/store/app.ts";
import { useFinder } from "../../../../src/store/faultFinder.ts";
import { FaultsPane } from "../../../../src/ui/features/faults/FaultsPane.tsx";
import { faultGroups } from "../../../../src/ui/features/faults/subjectFaults.ts";
import { askWhatFails, findFault, useFaultsView } from "../../../../src/ui/kit/asked/whatFails.ts";

const app = () => useApp.getState();

const suspected = () => screen.getByRole("list", { name: "Suspected faults" });
function show() {
  return render(
    <Tooltip.Provider>
      <FaultsPane />
    </Tooltip.Provider>,
  );
}

function house() {
  const example = exampleOf("house-universal");
  if (!example) throw new Error("no example");
  return example.load();
}

beforeEach(() => {
  app().openDesign(house());
  useFaultsView.setState({ mode: "find", subject: null, chosen: null });
  useFinder.getState().clear();
});
afterEach(cleanup);

describe("the faults of one thing", () => {
  const design = house();
  const all = faults(design);
  const wire = design.wires.find((w) => w.to[0] === "plate1");
  if (!wire) throw new Error("no wire");

  test("of a wire are those of its own joint, each once", () => {
    const [joint] = faultGroups(design, all, { type: "wire", id: wireId(wire) });
    const types = joint?.faults.map((f) => f.type) ?? [];
    expect(new Set(types).size).toBe(types.length);
    expect(types).toEqual(
      expect.arrayContaining(["plug-off", "open-joint", "short-joint", "corroded-joint"]),
    );
    for (const fault of joint?.faults ?? []) expect(fault.parts).toContain("plate1");
  });

  test("of a part are its own and those of its plugs, none of them twice", () => {
    const groups = faultGroups(design, all, { type: "part", id: "amp" });
    const ids = groups.flatMap((g) => g.faults.map((f) => f.id));
    expect(groups[0]?.faults.map((f) => f.id)).toContain("mains-off:amp");
    // Three inputs and four outputs, all joined.
    expect(groups).toHaveLength(1 + 7);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test.each([
    { name: "a part that is gone", subject: { type: "part", id: "gone" } },
    { name: "a wire that is gone", subject: { type: "wire", id: "gone.out>gone.in" } },
  ] as const)("of $name are none", ({ subject }) => {
    expect(faultGroups(design, all, subject)).toEqual([]);
  });
});

describe("what if this one fails", () => {
  test("says who loses what and shows it, and the design stays the same object", () => {
    const before = app().design;
    askWhatFails({ type: "part", id: "amp" });
    show();
    fireEvent.click(screen.getByRole("button", { name: "“Loft amplifier” has no mains power." }));
    const lost = screen.getByRole("group", { name: "Who loses what" });
    expect(within(lost).getByRole("button", { name: "TV living room" })).toBeTruthy();
    expect(within(lost).queryByText("Satellite")).toBeNull();
    expect(app().design).toBe(before);
    expect(app().preview?.canApply).toBe(false);
    expect(app().evaluation.record("amp")?.powered).toBe(false);
    fireEvent.click(screen.getByRole("button", { name: "“Loft amplifier” has no mains power." }));
    expect(app().preview).toBeNull();
    expect(app().evaluation.record("amp")?.powered).toBe(true);
  });

  test("keeps its answer when the preview is closed from elsewhere, and can show it again", () => {
    askWhatFails({ type: "part", id: "amp" });
    show();
    fireEvent.click(screen.getByRole("button", { name: "“Loft amplifier” has no mains power." }));
    fireEvent.click(screen.getByRole("button", { name: /^Show on the canvas/, pressed: true }));
    expect(app().preview).toBeNull();
    expect(screen.getByRole("group", { name: "Who loses what" })).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: /^Show on the canvas/, pressed: false }));
    expect(app().preview?.title).toMatch(/no mains/);
  });

  test("has for every fault of a part either somebody who loses something or the word that nobody would notice", () => {
    askWhatFails({ type: "part", id: "amp" });
    show();
    const outcomes = new Set<boolean>();
    for (const button of screen.getAllByRole("button", { expanded: false })) {
      fireEvent.click(button);
      const row = button.parentElement;
      if (!row) throw new Error("no row");
      const isSilent = within(row).queryByText(/^Nobody would notice/) !== null;
      expect(within(row).queryAllByRole("table").length === 0).toBe(isSilent);
      outcomes.add(isSilent);
    }
    // A DC isolator before an aerial that needs no supply harms nobody; a plug that is off does.
    expect(outcomes).toEqual(new Set([true, false]));
  });
});

describe("the search for the fault", () => {
  const mark = (name: string) => fireEvent.click(screen.getByRole("button", { name }));
  const search = () => screen.getByRole("button", { name: "Find the fault" });

  test("begins only once something is marked as failing, and a mark can be taken off", () => {
    findFault();
    show();
    expect(search()).toHaveProperty("disabled", true);
    mark("TV living room, Terrestrial TV works");
    expect(search()).toHaveProperty("disabled", true);
    mark("TV living room, Terrestrial TV fails");
    expect(search()).toHaveProperty("disabled", false);
    expect(useFinder.getState().seen.size).toBe(1);
    mark("TV living room, Terrestrial TV fails");
    expect(useFinder.getState().seen.size).toBe(0);
  });

  test("comes to the one room of three services that has lost all of them", async () => {
    findFault();
    show();
    mark("TV living room, Terrestrial TV fails");
    mark("DAB radio living room, DAB radio fails");
    mark("Satellite receiver living room, Satellite fails");
    fireEvent.click(screen.getByRole("button", { name: "All other receivers work" }));
    fireEvent.click(search());
    await waitFor(() => expect(useFinder.getState().status).toBe("done"), { timeout: 20_000 });
    const best = within(suspected()).getAllByRole("listitem")[0]?.querySelector("strong");
    // What the three share and nobody else uses: the diplexer's output, the drop, the plate's input.
    expect(best?.textContent).toMatch(
      /between “(Diplexer living room”.* and “Drop|Drop living room” and “Outlet)/,
    );
    expect(screen.getByRole("heading", { name: /Best next measurement/ })).toBeTruthy();
  });

  test("forgets what it found when the design changes or another mark is set", async () => {
    findFault();
    show();
    mark("TV bedroom 2, Terrestrial TV fails");
    fireEvent.click(search());
    await waitFor(() => expect(useFinder.getState().status).toBe("done"), { timeout: 20_000 });
    expect(within(suspected()).getAllByRole("listitem").length).toBeGreaterThan(0);
    mark("TV bedroom 3, Terrestrial TV fails");
    expect(screen.queryByRole("list", { name: "Suspected faults" })).toBeNull();
    expect(useFinder.getState().status).toBe("idle");
  });

  test("stops when told to, and says so", async () => {
    findFault();
    show();
    mark("TV bedroom 2, Terrestrial TV fails");
    fireEvent.click(search());
    fireEvent.click(await screen.findByRole("button", { name: "Stop" }));
    expect(screen.getByText("Stopped.")).toBeTruthy();
    expect(useFinder.getState().status).toBe("stopped");
  });

  test("has nothing to ask on an empty canvas", () => {
    app().openDesign({ ...EMPTY_DESIGN });
    show();
    expect(screen.getByRole("heading", { name: "No part yet that could fail" })).toBeTruthy();
  });
});
