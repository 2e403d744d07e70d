// @vitest-environment happy-dom
/** Practice as a trainee meets it. Roles as in WAI-ARIA 1.2; a plug that is off lets nothing pass: common practice. */
import { cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { exampleOf } from "../../../../src/design/examples.ts";
import { encodeLink } from "../../../../src/design/link.ts";
import { CASES } from "../../../../src/remedies/training/cases.ts";
import { faultSentence } from "../../../../src/sentences/faults/faultWords.ts";
import { caseWords } from "../../../../src/sentences/training/caseWords.ts";
import { useApp } from "../../../../src/store/app.ts";
import { useTraining } from "../../../../src/store/training.ts";
import { usePractice } from "../../../../src/store/trainingSession.ts";
import {
  leavePractice,
  openRandom,
  openTraining,
  seedOf,
} from "../../../../src/ui/features/training/actions.ts";
import { PracticeList } from "../../../../src/ui/features/training/PracticeList.tsx";
import { PracticeScreen } from "../../../../src/ui/features/training/PracticeScreen.tsx";

const app = () => useApp.getState();
const session = () => {
  const { session: open } = usePractice.getState();
  if (!open) throw new Error("no case is open");
  return open;
};

function house(key = "house-universal") {
  const example = exampleOf(key);
  if (!example) throw new Error("no example");
  return example.load();
}

async function work(fragment: string): Promise<void> {
  expect(await openTraining(fragment)).toBeNull();
  render(
    <Tooltip.Provider>
      <PracticeScreen session={session()} />
    </Tooltip.Provider>,
  );
}

const choose = (name: RegExp, option: string) =>
  fireEvent.change(screen.getByRole("combobox", { name }), { target: { value: option } });
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole("button", { name }));

beforeEach(() => {
  app().openDesign(house());
  for (const key of Object.keys(useTraining.getState().progress)) useTraining.getState().forget(key);
});
afterEach(() => {
  cleanup();
  leavePractice();
});

describe("a case on its own screen", () => {
  test("shows every part of the plan, and no strip, no verdict and no finding", async () => {
    await work("t1.lounge-dark");
    const { design } = session().opened;
    expect(document.querySelectorAll(".react-flow__node")).toHaveLength(design.parts.length);
    for (const give of [".strip", ".node-card-state", ".wire-mark", ".badge.error", ".node-card-mark"])
      expect(document.querySelector(give)).toBeNull();
    expect(document.body.textContent).not.toContain(
      faultSentence(session().opened.design, session().opened.fault),
    );
    expect(document.body.textContent).not.toContain(caseWords(session().opened).lesson);
  });

  test("measures level before a plug that is off, and nothing behind it; each look counts once", async () => {
    await work("t1.lounge-dark");
    choose(/^Connected to/, "split/out1");
    expect(document.querySelector(".meter-value")).toBeNull();
    press("Measure");
    expect(document.querySelector(".meter-value")?.textContent).toMatch(/dBµV on \d+ TV channels/);
    choose(/^Connected to/, "drop1/in");
    press("Measure");
    expect(document.querySelector(".meter-value")?.textContent).toBe("nothing");
    choose(/^Connected to/, "split/out1");
    press("Measure");
    expect(screen.getByText("2 measurements")).toBeTruthy();
    expect(within(screen.getByRole("region", { name: "Notes" })).getAllByRole("listitem")).toHaveLength(2);
  });

  test("takes hints one by one and judges the suspicion; solved, it names the fault and what to take home", async () => {
    await work("t1.lounge-dark");
    const { hints, lesson } = caseWords(session().opened);
    expect(screen.queryByText(hints[0])).toBeNull();
    press("Hint 1 of 3");
    expect(screen.getByText(hints[0])).toBeTruthy();
    expect(screen.queryByText(hints[1])).toBeNull();
    choose(/^The part/, "psu");
    choose(/^What is wrong there/, "mains-off");
    press("Submit");
    expect(screen.getByText("Not it")).toBeTruthy();
    choose(/^The part/, "split");
    choose(/^What is wrong there/, "plug-off");
    press("Submit");
    // 100 less 10 for a hint, 10 for a wrong guess, and 40 for naming it without a reading.
    expect(screen.getByRole("heading", { name: "Right. 40 points" })).toBe(document.activeElement);
    expect(screen.getByText(faultSentence(session().opened.design, session().opened.fault))).toBeTruthy();
    expect(screen.getByText(lesson)).toBeTruthy();
    expect(screen.queryByRole("button", { name: "Submit" })).toBeNull();
  });

  test("asks once more before it shows the fault, which brings no points", async () => {
    await work("t1.one-strand");
    press("Give up");
    expect(document.body.textContent).not.toContain(
      faultSentence(session().opened.design, session().opened.fault),
    );
    press("Show the fault, without points");
    expect(screen.getByRole("heading", { name: "This is the fault" })).toBeTruthy();
    press(/Work on it again/);
    expect(screen.getByRole("button", { name: "Submit" })).toBeTruthy();
  });

  test("warns of the roof where the meter would hang there", async () => {
    await work("t1.turned-by-the-wind");
    choose(/^Connected to/, "uhf/out");
    expect(screen.getByText(/On the roof: only for whoever is trained/)).toBeTruthy();
    choose(/^Connected to/, "tv1/in");
    expect(screen.queryByText(/On the roof/)).toBeNull();
  });

  test("leaves the document, its history and its selection alone", async () => {
    const { design } = app();
    await work("t1.lounge-dark");
    choose(/^Connected to/, "split/out1");
    press("Measure");
    press("Leave");
    expect(usePractice.getState().session).toBeNull();
    expect(app().design).toBe(design);
    expect(useApp.temporal.getState().pastStates).toHaveLength(0);
    expect(window.location.hash).toBe("");
  });
});

describe("an address of a case", () => {
  test("with a seed and a design opens the very same fault for everybody", async () => {
    expect(await openRandom(house(), 8)).toBeNull();
    const { fragment, key, opened } = session();
    leavePractice();
    expect(await openTraining(fragment)).toBeNull();
    expect(session().opened.fault.id).toBe(opened.fault.id);
    expect(session().key).toBe(key);
  });

  test.each([
    { name: "a case that does not exist", fragment: () => "t1.no-such", says: /no practice case “no-such”/ },
    { name: "a mark of a later kind", fragment: () => "t9.lounge-dark", says: /names no practice case/ },
    { name: "a seed alone", fragment: () => "t1.12", says: /no design/ },
    { name: "a seed and half a design", fragment: () => "t1.12&d1.AAAA", says: /cut short|damaged/ },
    {
      name: "a seed and a design that fails already",
      fragment: async () => `t1.12&${await encodeLink(house("house-wideband-fails"))}`,
      says: /needs a design that works/,
    },
  ])("that holds $name opens nothing and says why", async ({ fragment, says }) => {
    expect(await openTraining(await fragment())).toMatch(says);
    expect(usePractice.getState().session).toBeNull();
  });

  test.each([
    { text: "0", seed: 0 },
    { text: " 12 ", seed: 12 },
    { text: "4294967296", seed: null },
    { text: "-1", seed: null },
    { text: "1e3", seed: null },
    { text: "", seed: null },
  ])("takes “$text” for the seed $seed", ({ text, seed }) => {
    expect(seedOf(text)).toBe(seed);
  });
});

describe("the list of cases", () => {
  test("offers every case, and says of each how far it has come", async () => {
    await openTraining("t1.lounge-dark");
    useTraining.getState().update("lounge-dark", (p) => ({ ...p, hints: 1 }));
    leavePractice();
    render(
      <Tooltip.Provider>
        <PracticeList onDone={() => undefined} />
      </Tooltip.Provider>,
    );
    expect(screen.getAllByRole("button", { name: /^(Begin|Open): / })).toHaveLength(CASES.length);
    expect(screen.getByRole("button", { name: "Open: No picture in the lounge" })).toBeTruthy();
    expect(screen.getByText(`0 of ${CASES.length} solved`)).toBeTruthy();
  });

  test("gives the reason where the open design cannot hide a fault", async () => {
    app().openDesign(house("house-wideband-fails"));
    render(
      <Tooltip.Provider>
        <PracticeList onDone={() => undefined} />
      </Tooltip.Provider>,
    );
    press("Begin");
    expect((await screen.findByRole("alert")).textContent).toMatch(/needs a design that works/);
  });
});
