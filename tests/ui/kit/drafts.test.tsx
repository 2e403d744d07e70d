// @vitest-environment happy-dom
/** A field being typed in: what counts when, what one visit is, and what Escape brings back. */
import { act, cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { partById } from "../../../src/design/lookup.ts";
import { fieldMeta, number } from "../../../src/parts/fields.ts";
import { useApp } from "../../../src/store/app.ts";
import { LabelField } from "../../../src/ui/features/inspector/LabelField.tsx";
import { OptionField } from "../../../src/ui/kit/fields/OptionField.tsx";
import { TitleField } from "../../../src/ui/shell/bar/TitleField.tsx";
import { drawn } from "../../design/house.ts";

const app = () => useApp.getState();
const undoSteps = () => useApp.temporal.getState().pastStates.length;

beforeEach(() => {
  vi.useFakeTimers();
  app().openDesign(drawn(["aerial-uhf"]));
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

function Label() {
  const part = useApp((s) => partById(s.design, "aerial1"));
  return part ? <LabelField part={part} /> : null;
}

const pass = (ms: number) => act(() => vi.advanceTimersByTime(ms));
const titleField = () => {
  const { opened } = app();
  render(<TitleField opened={opened} />);
  return screen.getByRole("textbox");
};
const type = (field: HTMLElement, text: string) => fireEvent.change(field, { target: { value: text } });

describe("A title being typed", () => {
  test("counts after a pause, while text and focus stay in the field", () => {
    const field = titleField();
    field.focus();
    type(field, "Flat 3 ");
    expect(app().design.title).not.toBe("Flat 3");
    pass(2000);
    expect(app().design.title).toBe("Flat 3");
    expect(field).toHaveProperty("value", "Flat 3 ");
    expect(document.activeElement).toBe(field);
  });

  test("counts within two seconds also when the typing never pauses", () => {
    const field = titleField();
    for (let n = 1; n <= 20; n += 1) {
      type(field, `Flat ${n}`);
      pass(100);
    }
    // Typed for 2 s without a pause: what was typed at the beginning must stand there.
    expect(app().design.title).toMatch(/^Flat \d+$/);
  });

  test.each([
    { name: "the page is left", leave: () => window.dispatchEvent(new Event("pagehide")) },
    {
      name: "the page is hidden",
      leave: () => {
        vi.spyOn(document, "visibilityState", "get").mockReturnValue("hidden");
        document.dispatchEvent(new Event("visibilitychange", { bubbles: true }));
        vi.restoreAllMocks();
      },
    },
    { name: "the field goes", leave: cleanup },
  ])("counts at once when $name", ({ leave }) => {
    type(titleField(), "Flat 3");
    leave();
    expect(app().design.title).toBe("Flat 3");
  });

  test("counts before those hear of the leaving who save", () => {
    const seen: string[] = [];
    const save = () => seen.push(app().design.title);
    window.addEventListener("pagehide", save);
    type(titleField(), "Flat 3");
    window.dispatchEvent(new Event("pagehide"));
    window.removeEventListener("pagehide", save);
    expect(seen).toEqual(["Flat 3"]);
  });

  test("never goes to a design that was opened meanwhile", () => {
    type(titleField(), "Flat 3");
    app().openDesign(drawn([]));
    pass(5000);
    expect(app().design.title).not.toBe("Flat 3");
  });

  test("is not taken while it is empty, and the field says so", () => {
    const before = app().design.title;
    const field = titleField();
    type(field, " ");
    pass(5000);
    expect(app().design.title).toBe(before);
    expect(field.getAttribute("aria-invalid")).toBe("true");
  });
});

describe("A visit to a field", () => {
  test("is one step back, however slowly was typed", () => {
    render(<Label />);
    const field = screen.getByRole("textbox");
    for (const text of ["L", "Lo", "Loft"]) {
      type(field, text);
      pass(10_000);
    }
    expect(partById(app().design, "aerial1")?.label).toBe("Loft");
    expect(undoSteps()).toBe(1);
  });

  test("ends with leaving: the next one is a step of its own", () => {
    render(<Label />);
    const field = screen.getByRole("textbox");
    type(field, "Loft");
    fireEvent.blur(field);
    type(field, "Roof");
    expect(undoSteps()).toBe(2);
  });

  test("is taken back by Escape, and leaves no step behind", () => {
    const { label } = partById(app().design, "aerial1") ?? {};
    render(<Label />);
    const field = screen.getByRole("textbox");
    type(field, "Loft");
    type(field, "Loft aerial");
    fireEvent.keyDown(field, { key: "Escape" });
    expect(partById(app().design, "aerial1")?.label).toBe(label);
    expect(field).toHaveProperty("value", label);
    expect(undoSteps()).toBe(0);
  });

  test("is taken back by Escape also where something else was changed meanwhile, which stays", () => {
    const { label } = partById(app().design, "aerial1") ?? {};
    render(<Label />);
    const field = screen.getByRole("textbox");
    type(field, "Loft");
    app().change({ ok: true, design: { ...app().design, title: "Meanwhile" }, notes: [] });
    fireEvent.keyDown(field, { key: "Escape" });
    expect(partById(app().design, "aerial1")?.label).toBe(label);
    expect(app().design.title).toBe("Meanwhile");
  });
});

describe("A number being typed", () => {
  const meta = fieldMeta(number({ label: "Length", unit: "m", min: 1, max: 50, default: 20 }));
  const field = (onTry: (value: unknown) => string | null) => {
    if (!meta) throw new Error("no description");
    render(<OptionField meta={meta} value={20} onTry={onTry} onTakeBack={() => false} />);
    return screen.getByRole("spinbutton");
  };

  test("is never handed on while it is none, and the field says that it is not taken yet", () => {
    const tried: unknown[] = [];
    const input = field((value) => {
      tried.push(value);
      return null;
    });
    type(input, "30x");
    pass(5000);
    window.dispatchEvent(new Event("pagehide"));
    expect(tried).toEqual([]);
    expect(screen.getByRole("alert").textContent).toContain("Not taken yet: still 20 m.");
  });

  test("comes back as it was by Escape after good and bad input", () => {
    const tried: unknown[] = [];
    const input = field((value) => {
      tried.push(value);
      return null;
    });
    type(input, "30");
    type(input, "30x");
    fireEvent.keyDown(input, { key: "Escape" });
    expect(tried).toEqual([30, 20]);
    expect(screen.queryByRole("alert")).toBeNull();
  });
});
