// @vitest-environment happy-dom
/** The one list of commands. Keys are named as in the UI Events KeyboardEvent key values standard. */
import { beforeEach, describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../../src/design/design.ts";
import { useApp } from "../../../src/store/app.ts";
import { addIntoWire, addKind } from "../../../src/ui/canvas/adding.ts";
import { joinToPart, tapPort } from "../../../src/ui/canvas/joining.ts";
import { useCanvas } from "../../../src/ui/canvas/state.ts";
import { shortcutWords } from "../../../src/ui/kit/command.ts";
import { COMMANDS, commandOf, runCommand } from "../../../src/ui/shell/commands.ts";
import { draw } from "../../draw.ts";

const app = () => useApp.getState();
const wires = () => app().design.wires.map((w) => `${w.from.join(".")}>${w.to.join(".")}`);

const chain = () =>
  draw(
    { uhf: ["aerial-uhf"], run: ["cable"], tv: ["receiver-tv"], spare: ["receiver-tv"] },
    "uhf.out > run.in, run.out > tv.in",
  );

beforeEach(() => {
  app().openDesign(chain());
  useCanvas.setState({ selecting: false, dialog: null });
});

describe("the list", () => {
  test("has no id and no shortcut twice", () => {
    const ids = COMMANDS.map((c) => c.id);
    expect(new Set(ids).size).toBe(ids.length);
    const keys = COMMANDS.flatMap((c) => c.shortcuts);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("runs nothing that makes no sense now", () => {
    app().openDesign(EMPTY_DESIGN);
    app().select({});
    for (const command of COMMANDS) runCommand(command.id);
    expect(app().design).toBe(EMPTY_DESIGN);
    expect(useCanvas.getState().dialog).toBeNull();
  });

  test.each([
    { id: "undo", words: "Ctrl+Z" },
    { id: "redo", words: "Ctrl+Shift+Z" },
    { id: "nearer", words: "+" },
    { id: "farther", words: "-" },
    { id: "leap-left", words: "Shift+←" },
    { id: "select-none", words: "Esc" },
  ])("prints the shortcut of $id as $words", ({ id, words }) => {
    const command = commandOf(id);
    expect(command && shortcutWords(command)).toBe(words);
  });
});

describe("the commands", () => {
  test("delete heals the wire of a part in line, as one step back", () => {
    app().select({ parts: ["run"] });
    runCommand("delete");
    expect(wires()).toEqual(["uhf.out>tv.in"]);
    runCommand("undo");
    expect(wires()).toEqual(["uhf.out>run.in", "run.out>tv.in"]);
  });

  // The clipboard of the system answers when it likes.
  test("copy and paste make new parts with the wires among them, and select them", async () => {
    app().select({ parts: ["uhf", "run"] });
    runCommand("copy");
    runCommand("paste");
    await expect.poll(() => app().design.parts).toHaveLength(6);
    expect(wires()).toHaveLength(3);
    expect(app().selection.parts).toHaveLength(2);
    expect(app().selection.parts).not.toContain("uhf");
  });

  test("cut takes away what paste brings back", async () => {
    app().select({ parts: ["spare"] });
    runCommand("cut");
    expect(app().design.parts.map((p) => p.kind)).toEqual(["aerial-uhf", "cable", "receiver-tv"]);
    runCommand("paste");
    await expect.poll(() => app().design.parts.filter((p) => p.kind === "receiver-tv")).toHaveLength(2);
  });

  test("arrow keys move what is selected by one step of the grid, several presses as one step back", () => {
    app().select({ parts: ["tv"] });
    for (let i = 0; i < 3; i++) runCommand("move-right");
    runCommand("move-up");
    expect(app().design.parts.find((p) => p.id === "tv")?.at).toEqual([624, -8]);
    runCommand("undo");
    expect(app().design.parts.find((p) => p.id === "tv")?.at).toEqual([600, 0]);
  });

  test("lining up brings the selected parts to one edge", () => {
    app().select({ parts: ["run", "tv"] });
    runCommand("align-left");
    expect(
      app()
        .design.parts.filter((p) => p.at[0] === 300)
        .map((p) => p.id),
    ).toEqual(["run", "tv"]);
  });

  test("select all, then let go", () => {
    runCommand("select-all");
    expect(app().selection.parts).toHaveLength(4);
    runCommand("select-none");
    expect(app().selection.parts).toHaveLength(0);
  });
});

describe("joining by taps", () => {
  beforeEach(() => {
    app().select({ parts: ["tv"] });
    runCommand("delete");
    app().setConnecting(null);
  });

  test("the second tap joins, from whichever end one begins", () => {
    tapPort(["spare", "in"]);
    expect(app().connecting).toEqual(["spare", "in"]);
    tapPort(["run", "out"]);
    expect(wires()).toContain("run.out>spare.in");
    expect(app().connecting).toBeNull();
  });

  test("a second tap on the same port gives up", () => {
    tapPort(["run", "out"]);
    tapPort(["run", "out"]);
    expect([app().connecting, wires().length]).toEqual([null, 1]);
  });

  test("a tap on a joined port selects its wire", () => {
    tapPort(["uhf", "out"]);
    expect(app().connecting).toBeNull();
    expect(app().selection.wires).toEqual(["uhf.out>run.in"]);
  });

  test("a joint that makes no sense is refused with the reason", () => {
    tapPort(["run", "out"]);
    tapPort(["uhf", "out"]);
    expect(wires()).toHaveLength(1);
    expect(app().notices.at(-1)?.text).toMatch(/both outputs/);
  });

  test("the second tap may go to the card: its first port that fits is taken", () => {
    expect(joinToPart(["run", "out"], "spare")).toBe(true);
    expect(wires()).toContain("run.out>spare.in");
  });

  test("a card without a port that fits says why", () => {
    expect(joinToPart(["run", "out"], "uhf")).toBe(false);
    expect(app().notices.at(-1)?.text).not.toBe("");
  });
});

describe("adding from the tray", () => {
  test("goes into the selected wire where it fits, and is selected then", () => {
    app().select({ wires: ["run.out>tv.in"] });
    addKind("attenuator");
    const [added] = app().selection.parts;
    expect(wires()).toEqual(expect.arrayContaining([`run.out>${added}.in`, `${added}.out>tv.in`]));
  });

  test("stands alone where it has no way through", () => {
    app().select({ wires: ["run.out>tv.in"] });
    addKind("aerial-fm");
    expect(app().design.parts).toHaveLength(5);
    expect(wires()).toHaveLength(2);
  });

  test("into a wire is one step back", () => {
    addIntoWire("attenuator", "run.out>tv.in");
    app().undo();
    expect(app().design.parts).toHaveLength(4);
    expect(wires()).toHaveLength(2);
  });
});
