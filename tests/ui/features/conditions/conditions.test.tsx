// @vitest-environment happy-dom
/** The conditions as a user sees them: a table of places and conditions, the worst marked in words too. */
import { act, cleanup, render, screen, waitFor } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, describe, expect, test } from "vitest";
import { setSettings } from "../../../../src/design/edits/settings.ts";
import { useApp } from "../../../../src/store/app.ts";
import { useConditions } from "../../../../src/store/conditions.ts";
import { ConditionsForm } from "../../../../src/ui/features/conditions/ConditionsForm.tsx";
import { commandOf } from "../../../../src/ui/shell/commands.ts";
import { draw } from "../../../draw.ts";

/** Two receivers on one switched output: each gets only what the other's request leaves (trade fact, no source). */
const SHARED = draw(
  {
    y: ["receiver-sat", { polarisation: "V" }],
    z: ["receiver-sat", { polarisation: "H" }],
    s: ["splitter"],
    l: ["lnb-universal"],
    d: ["dish"],
  },
  "d.sky > l.sky, l.out > s.in, s.out1 > y.sat, s.out2 > z.sat",
);

function show() {
  act(() => useApp.getState().openDesign(SHARED));
  render(
    <Tooltip.Provider>
      <ConditionsForm />
    </Tooltip.Provider>,
  );
}

const headings = async () =>
  (await screen.findAllByRole("columnheader", {}, { timeout: 20_000 })).map((h) => h.textContent);

afterEach(() => {
  cleanup();
  act(() => useConditions.getState().stop());
});

describe("the conditions of a design", () => {
  test("are judged when they are looked at, place by place, and the headline says which is the worst", async () => {
    show();
    expect(await headings()).toEqual(["Place", "As drawn", "In rain", "On alone"]);
    const row = await screen.findByRole("row", { name: /^y/ });
    expect(row.textContent).toMatch(/^yfails, the worst.*works, [\d.]+ dB$/);
    expect(screen.getByText(/Alone, 2 that fail as drawn work\./)).toBeTruthy();
    expect(screen.getByText(/^Rain on every dish that is exceeded for 0\.1 % of a year\.$/)).toBeTruthy();
  });

  test("follow the settings of the document", async () => {
    show();
    await headings();
    const { design, change } = useApp.getState();
    act(() => change(setSettings(design, "judgeRain", false)));
    await waitFor(async () => expect(await headings()).toEqual(["Place", "As drawn", "On alone"]));
  });

  test("are opened by a command, once there is a part", () => {
    act(() => useApp.getState().openDesign(SHARED));
    expect(commandOf("conditions")?.enabled()).toBe(true);
  });
});
