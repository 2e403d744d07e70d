// @vitest-environment happy-dom
/** The dialog of revisions where something is amiss, and what a comparison with now begins with. */
import { cleanup, fireEvent, render, screen } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type Design, EMPTY_DESIGN } from "../../../../src/design/design.ts";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { useApp } from "../../../../src/store/app.ts";
import type { RevisionHead } from "../../../../src/store/documents/documentStorage.ts";
import { useDocuments } from "../../../../src/store/documents/documents.ts";
import { historyOf } from "../../../../src/store/documents/history.ts";
import { compareRevision, lookAtRevision } from "../../../../src/ui/features/revisions/actions.ts";
import { RevisionList } from "../../../../src/ui/features/revisions/RevisionList.tsx";
import { useCompared } from "../../../../src/ui/kit/asked/compared.ts";
import { usePanes } from "../../../../src/ui/kit/panes.ts";

const head: RevisionHead = {
  id: "a:1",
  document: "a",
  when: new Date("2026-03-29T18:05").getTime(),
  name: "Offer",
  by: "user",
  parts: 3,
};

/** What the storage answers when it is asked for the text of the revision. */
function stored(design: Design): void {
  const history = historyOf(design);
  useDocuments.setState({ readRevision: async () => ({ ok: true, design, notes: [], history }) });
}

function damaged(): void {
  const answer = { ok: false, problem: "The text ends in the middle.", text: '{"title": "Ho' } as const;
  useDocuments.setState({ readRevision: async () => answer });
}

function show() {
  return render(
    <Tooltip.Provider>
      <RevisionList />
    </Tooltip.Provider>,
  );
}

beforeEach(() => {
  usePanes.setState({ dialog: "revisions" });
  useDocuments.setState({ current: "a", state: "saved", reason: null, revisions: async () => [head] });
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

test("a revision that cannot be read says why, and its text can be taken along as it is", async () => {
  damaged();
  show();
  fireEvent.click(await screen.findByRole("button", { name: "Look at it" }));
  expect(await screen.findByText("This revision cannot be read. The text ends in the middle.")).toBeTruthy();
  const blob = vi.spyOn(URL, "createObjectURL").mockReturnValue("blob:it");
  vi.spyOn(HTMLAnchorElement.prototype, "click").mockReturnValue();
  fireEvent.click(screen.getByRole("button", { name: "Download what is there" }));
  const [file] = blob.mock.calls[0] ?? [];
  expect(file instanceof Blob && (await file.text())).toBe('{"title": "Ho');
  expect(usePanes.getState().dialog).toBe("revisions");
});

test("where the storage refuses, the reason stands there, and what can be read is still listed", async () => {
  useDocuments.setState({ state: "unavailable", reason: "Not saved: there is no room." });
  show();
  expect(await screen.findByRole("button", { name: /^Offer/ })).toBeTruthy();
  expect(screen.getByText(/^Not saved: there is no room\. Until that is repaired/)).toBeTruthy();
  expect(screen.queryByRole("textbox")).toBeNull();
  expect(screen.getByRole("button", { name: "Download the file" })).toBeTruthy();
});

test("a design that is not an own one has no revisions, and it is said how it becomes one", () => {
  useDocuments.setState({ current: null });
  show();
  expect(screen.getByText(/It becomes one with your first change/)).toBeTruthy();
  expect(screen.queryByRole("textbox")).toBeNull();
});

test("an empty name is refused with a sentence, and nothing is kept", async () => {
  const taken: string[] = [];
  useDocuments.setState({
    takeRevision: async (name) => {
      taken.push(name);
      return "A revision needs a name.";
    },
  });
  show();
  fireEvent.click(screen.getByRole("button", { name: "Keep" }));
  expect(await screen.findByText("A revision needs a name.")).toBeTruthy();
  expect(taken).toEqual([""]);
});

test("now is compared with the same variant as it was then", async () => {
  const [one, two] = ["house-universal", "house-wideband-fails"].map((key) =>
    EXAMPLES.find((example) => example.key === key)?.load(),
  );
  if (!one || !two) throw new Error("both examples are there");
  const planA = { name: "Plan A", parts: two.parts, wires: two.wires };
  useApp.getState().openDesign({ ...two, variant: "Plan A" });

  stored({ ...one, variants: [planA] });
  await compareRevision(head);
  const { before, after } = useCompared.getState();
  expect(before?.design?.parts).toBe(two.parts);
  expect(before?.name).toContain("Offer");
  expect(after).toBeNull();
  expect(usePanes.getState().dialog).toBe("compare");

  // There was no such variant yet.
  stored(one);
  await compareRevision(head);
  expect(useCompared.getState().before?.design?.parts).toBe(one.parts);
});

test("what is looked at is a preview, and to apply it is to restore the revision", async () => {
  const restored: string[] = [];
  useApp.getState().openDesign({ ...EMPTY_DESIGN, title: "Now" });
  stored({ ...EMPTY_DESIGN, title: "Then" });
  useDocuments.setState({
    restoreRevision: async (id) => {
      restored.push(id);
      return "It is no longer there.";
    },
  });
  expect(await lookAtRevision(head)).toBeNull();
  expect(usePanes.getState().dialog).toBeNull();
  expect(useApp.getState()).toMatchObject({
    design: { title: "Now" },
    preview: { design: { title: "Then" } },
  });
  expect(useApp.getState().applyPreview()).toBe(true);
  expect(restored).toEqual(["a:1"]);
  expect(useApp.getState().preview).toBeNull();
  // What is in the way is said, and the design stays.
  expect(useApp.getState()).toMatchObject({ design: { title: "Now" } });
  await vi.waitFor(() =>
    expect(useApp.getState().notices.map(({ text }) => text)).toContain("It is no longer there."),
  );
});
