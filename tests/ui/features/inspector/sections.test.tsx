// @vitest-environment happy-dom
/** What the inspector tells of each kind of part, as a user meets it. */
import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, describe, expect, test } from "vitest";
import { useApp } from "../../../../src/store/app.ts";
import { Inspector } from "../../../../src/ui/features/inspector/Inspector.tsx";
import { draw } from "../../../draw.ts";

const SYSTEM = draw(
  {
    dish: ["dish"],
    lnb: ["lnb-universal", { outputs: "2" }],
    split: ["splitter", { dc: "all" }],
    r1: ["receiver-sat", { polarisation: "V", half: "low" }],
    r2: ["receiver-sat", { polarisation: "H", half: "high" }],
    uhf: ["aerial-uhf"],
    amp: ["amp-distribution"],
    tv: ["receiver-tv"],
  },
  "dish.sky > lnb.sky, lnb.out1 > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
);

function inspect(part: string) {
  act(() => {
    useApp.getState().openDesign(SYSTEM);
    useApp.getState().select({ parts: [part] });
  });
  return render(
    <Tooltip.Provider>
      <Inspector />
    </Tooltip.Provider>,
  );
}

const titles = () => screen.getAllByRole("heading", { level: 3 }).map((h) => h.textContent);
const region = (name: string) => within(screen.getByRole("region", { name }));

afterEach(cleanup);

describe("the inspector of", () => {
  test.each([
    {
      part: "dish",
      has: ["Alignment", "Link budget", "Rain"],
      hasNot: ["Tuners", "Commands", "Level from the field"],
    },
    { part: "lnb", has: ["How hard it is driven", "Commands", "Supply"], hasNot: ["Rain", "Tuners"] },
    { part: "split", has: ["Supply"], hasNot: ["Commands", "How hard it is driven", "Rain"] },
    { part: "r1", has: ["At this moment", "What it gets", "Tuners", "Supply"], hasNot: ["Commands", "Rain"] },
    { part: "uhf", has: ["Level from the field"], hasNot: ["Supply", "Rain"] },
    { part: "tv", has: ["What it gets"], hasNot: ["Tuners", "Supply"] },
  ])("$part tells $has, and nothing that is not its business", ({ part, has, hasNot }) => {
    inspect(part);
    for (const title of has) expect(titles()).toContain(title);
    for (const title of hasNot) expect(titles()).not.toContain(title);
  });

  test("a receiver that shares an output says what each tuner gets alone and together (80 alone, a quarter together: common practice, no source)", () => {
    inspect("r1");
    const [, row] = region("Tuners").getAllByRole("row");
    expect(row?.textContent).toContain("80 of 80");
    expect(row?.textContent).toContain("20 of 80");
  });

  test("a contested converter names both who speak to it, the winner first", () => {
    inspect("lnb");
    const names = region("Commands")
      .getAllByRole("rowheader")
      .map((h) => h.textContent ?? "");
    expect(names[0]).toMatch(/^r2 asks for H high · decides/);
    expect(names[1]).toMatch(/^r1 asks for V low/);
    expect(region("Commands").getByText(/contested/)).toBeTruthy();
  });

  test("a dish says from which side its converter's turn is seen", () => {
    inspect("dish");
    expect(region("Alignment").getByText(/seen from behind the dish, looking at the satellite/)).toBeTruthy();
    // Satellite at 20°E, site at 10°E, 50°N: atan(sin 10° / tan 50°) = 8.3°.
    expect(region("Alignment").getByText("8.3° anticlockwise")).toBeTruthy();
  });

  test("a dish with a satellite below the horizon says so and nothing else", () => {
    act(() => {
      useApp.getState().openDesign(draw({ dish: ["dish", { orbitalPositionDegE: 180 }] }, ""));
      useApp.getState().select({ parts: ["dish"] });
    });
    render(
      <Tooltip.Provider>
        <Inspector />
      </Tooltip.Provider>,
    );
    expect(region("Alignment").getByText(/below the horizon/)).toBeTruthy();
    expect(titles()).not.toContain("Link budget");
  });

  test("a long card has shortcuts to its sections that take the focus there", () => {
    inspect("dish");
    const nav = within(screen.getByRole("navigation", { name: "Sections of this part" }));
    expect(nav.getAllByRole("button").map((b) => b.textContent)).toEqual(titles());
    fireEvent.click(nav.getByRole("button", { name: "Rain" }));
    expect(document.activeElement?.textContent).toBe("Rain");
  });
});

// 13 V is right-hand, 18 V left-hand circular (common practice, no source).
test("a receiver of circular waves has right-hand and left-hand in its menu, and its LNB in its commands", () => {
  const transponders = ["R", "L"].map((polarisation) => ({ frequencyMHz: 11_780, polarisation }));
  const circular = draw(
    {
      dish: ["dish", { transponders }],
      lnb: ["lnb-universal", { feedType: "circular" }],
      r1: ["receiver-sat", { polarisation: "H", half: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out > r1.sat",
  );
  const look = (part: string) => {
    act(() => {
      useApp.getState().openDesign(circular);
      useApp.getState().select({ parts: [part] });
    });
    return render(
      <Tooltip.Provider>
        <Inspector />
      </Tooltip.Provider>,
    );
  };
  look("r1");
  const menu = region("At this moment");
  expect(menu.getByRole("radio", { name: "Left-hand (18 V)" })).toHaveProperty("checked", true);
  expect(menu.queryByRole("radio", { name: /Vertical|Horizontal/ })).toBeNull();
  cleanup();
  look("lnb");
  const commands = region("Commands");
  expect(commands.getByText(/asks for L high/)).toBeTruthy();
  expect(commands.getByRole("columnheader", { name: "V for R" })).toBeTruthy();
  expect(commands.queryByText(/horizontal/)).toBeNull();
});
