// @vitest-environment happy-dom
/** What a design is judged by, as a user sees and sets it; and the help's known limits. */
import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../../../src/design/design.ts";
import { settingsOf } from "../../../../src/design/settings.ts";
import { KNOWN_LIMITS } from "../../../../src/findings/knownLimits.ts";
import { useApp } from "../../../../src/store/app.ts";
import { modeWords } from "../../../../src/ui/features/settings/modeWords.ts";
import { SettingsForm } from "../../../../src/ui/features/settings/SettingsForm.tsx";
import { HelpText } from "../../../../src/ui/shell/help/HelpText.tsx";

const settings = () => settingsOf(useApp.getState().design);
const rowOf = (name: RegExp) => screen.getByRole("row", { name }).textContent;

beforeEach(() => {
  act(() => useApp.getState().openDesign(EMPTY_DESIGN));
  render(
    <Tooltip.Provider>
      <SettingsForm />
    </Tooltip.Provider>,
  );
});
afterEach(cleanup);

describe("the settings of a design", () => {
  test("show the chosen limits with their source", () => {
    // EN 60728-1 outlet levels, as quoted in a public table: satellite 47 to 77, DAB 28 to 94 dBµV.
    expect(rowOf(/^Satellite/)).toContain("4777");
    expect(rowOf(/^DAB/)).toContain("2894");
    expect(screen.getByText(/Source:.*EN 60728-1/)).toBeTruthy();
  });

  test("another profile shows at once, and one undo brings the former back", () => {
    fireEvent.change(screen.getByRole("combobox", { name: "Limits at outlets" }), {
      target: { value: "rd346" },
    });
    expect(settings().limits).toBe("rd346");
    // Royal Decree 346/2011, Annex I 4.5: terrestrial TV 47 to 70 dBµV, C/N 25 dB, MER 21 dB.
    expect(rowOf(/^Terrestrial TV any other/)).toContain("47702521");
    act(() => useApp.getState().undo());
    expect(settings().limits).toBe("en60728");
    expect(rowOf(/^DAB/)).toContain("2894");
  });

  test("limits of one's own keep the last good value and say why when a level is out of range", () => {
    fireEvent.change(screen.getByRole("combobox", { name: "Limits at outlets" }), {
      target: { value: "own" },
    });
    fireEvent.click(screen.getByRole("button", { name: /^My own limits: 4 rows, edit/ }));
    const dialog = screen.getByRole("dialog", { name: "My own limits" });
    const [least] = within(dialog).getAllByRole("spinbutton", { name: "Min" });
    const before = settings().ownLimits;
    if (least) fireEvent.change(least, { target: { value: "500" } });
    expect(settings().ownLimits).toEqual(before);
    expect(dialog.textContent).toMatch(/row 1: Min is 500 dBµV; allowed is 0 to 120 dBµV\./);
    if (least) fireEvent.change(least, { target: { value: "48" } });
    expect(settings().ownLimits[0]?.minDbuv).toBe(48);
  });

  test("all derating rules stand with what they take off", () => {
    // 7.5·log₁₀(9) = 7.16 (a trade table prints 7); 10·log₁₀(4/2) = 3.01 (another prints 3); 10·log₁₀(10 − 1) = 9.54.
    expect(rowOf(/10 · log₁₀\(n − 1/)).toContain("9.5");
    expect(rowOf(/7\.5 · log/)).toContain("7.2");
    expect(rowOf(/10 · log₁₀\(n \/ 2/)).toContain("3.0");
    fireEvent.change(screen.getByRole("combobox", { name: "Derating for many carriers" }), {
      target: { value: "power" },
    });
    expect(settings().derating).toBe("power");
    expect(rowOf(/10 · log₁₀\(n \/ 2/)).toContain("every amplifier");
    expect(rowOf(/7\.5 · log/)).toContain("none");
  });

  test("products of cascaded amplifiers add in step unless the design says otherwise", () => {
    expect(settings().cascade).toBe("in step");
    fireEvent.change(screen.getByRole("combobox", { name: "Cascaded amplifiers" }), {
      target: { value: "by power" },
    });
    expect(settings().cascade).toBe("by power");
  });

  test("limits from a file are in use at once, and a fault of the file is said", async () => {
    const pick = (text: string) => {
      const files = [new File([text], "limits.json", { type: "application/json" })];
      const click = HTMLInputElement.prototype.click;
      HTMLInputElement.prototype.click = function (this: HTMLInputElement) {
        HTMLInputElement.prototype.click = click;
        Object.defineProperty(this, "files", { value: files });
        this.dispatchEvent(new Event("change"));
      };
      fireEvent.click(screen.getByRole("button", { name: "Read limits from a file…" }));
    };
    expect(screen.queryByRole("button", { name: "Download my limits" })).toBeNull();
    pick('{"format":"downlead-limits","version":9}');
    expect(await screen.findByText(/newer edition wrote it, as version 9/)).toBeTruthy();
    expect(settings().limits).toBe("en60728");
    pick(
      '{"format":"downlead-limits","version":1,"name":"Operator A","isolation":[{"fromMHz":47,"toMHz":862,"db":44}]}',
    );
    expect(await screen.findByText("Isolation between flats, 47 to 862 MHz: at least 44 dB.")).toBeTruthy();
    expect(screen.getByText(/limits of the file are in use now/)).toBeTruthy();
    expect(screen.getByRole("button", { name: "Download my limits" })).toBeTruthy();
    act(() => useApp.getState().undo());
    expect(settings().limits).toBe("en60728");
  });

  test("figures of a condition are asked for while it counts", () => {
    expect(screen.getByRole("spinbutton", { name: /Rain that must be stood/ })).toBeTruthy();
    fireEvent.click(screen.getByRole("switch", { name: /Also judged in rain/ }));
    expect(settings().judgeRain).toBe(false);
    expect(screen.queryByRole("spinbutton", { name: /Rain that must be stood/ })).toBeNull();
  });
});

describe("words for the modulations of a row", () => {
  test.each([
    { prefix: "dvbt2-256qam", words: "DVB-T2, 256QAM" },
    { prefix: "dvbs-", words: "DVB-S" },
    { prefix: "dvbs2-qpsk", words: "DVB-S2, QPSK" },
    { prefix: "fm-mono", words: "FM, mono" },
    { prefix: "", words: "any other" },
  ])("“$prefix” reads “$words”", ({ prefix, words }) => {
    expect(modeWords(prefix, true)).toBe(words);
  });
});

describe("the help", () => {
  test("lists every known limit of the model", () => {
    cleanup();
    render(<HelpText />);
    const titles = screen.getAllByRole("term").map((t) => t.textContent);
    expect(titles).toEqual(KNOWN_LIMITS.map((limit) => limit.title));
    expect(new Set(titles).size).toBe(titles.length);
    for (const { text } of KNOWN_LIMITS) expect(screen.getByText(text)).toBeTruthy();
  });
});
