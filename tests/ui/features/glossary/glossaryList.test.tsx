// @vitest-environment happy-dom
/** The glossary as somebody meets it who looks a word up. Roles are those of WAI-ARIA 1.2 (dl, dt, dd: term, definition). */
import { cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, expect, test } from "vitest";
import { GLOSSARY } from "../../../../src/sentences/glossary.ts";
import { GlossaryList } from "../../../../src/ui/features/glossary/GlossaryList.tsx";
import { openGlossary, useGlossary } from "../../../../src/ui/kit/asked/glossary.ts";
import { usePanes } from "../../../../src/ui/kit/panes.ts";
import { COMMANDS } from "../../../../src/ui/shell/commands.ts";

afterEach(() => {
  cleanup();
  useGlossary.setState({ query: "" });
  usePanes.setState({ dialog: null });
});

const terms = () => screen.getAllByRole("term").map((each) => each.textContent);

test("all terms stand there, each with its meaning", () => {
  render(<GlossaryList />);
  expect(terms()).toHaveLength(GLOSSARY.length);
  expect(screen.getAllByRole("definition").every((each) => each.textContent?.endsWith("."))).toBe(true);
});

test("what is typed narrows the list, terms before meanings", () => {
  render(<GlossaryList />);
  const field = screen.getByRole("searchbox", { name: "Search the glossary" });
  fireEvent.change(field, { target: { value: "quattro" } });
  // The meaning of "Quad" names the quattro as well.
  expect(terms()).toEqual(["Quattro", "Quad"]);
  fireEvent.change(field, { target: { value: "diseqc" } });
  expect(terms()[0]).toBe("Position command, DiSEqC");
  fireEvent.change(field, { target: { value: "nothing of the kind" } });
  expect(screen.queryAllByRole("term")).toEqual([]);
  expect(screen.getByText("No term matches.")).toBeTruthy();
});

test("a link opens it at a term, the command at its beginning", () => {
  openGlossary("Isolation");
  expect(usePanes.getState().dialog).toBe("glossary");
  render(<GlossaryList />);
  expect(terms()[0]).toBe("Isolation");
  cleanup();
  COMMANDS.find(({ label }) => label === "Glossary")?.run();
  render(<GlossaryList />);
  expect(terms()).toHaveLength(GLOSSARY.length);
});
