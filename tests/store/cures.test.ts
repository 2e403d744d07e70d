/** The search as the page drives it, here without workers. What it finds is tested with the search itself. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { rename } from "../../src/design/edits/parts.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { useApp } from "../../src/store/app.ts";
import { useCures } from "../../src/store/cures.ts";
// Loaded at need: not on the clock of the first search.
import "../../src/store/searchTask.ts";
import { withSharedObjects } from "../../src/store/sharedObjects.ts";

const cures = () => useCures.getState();
const example = (key: string) => {
  const found = EXAMPLES.find((e) => e.key === key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
};
const finished = () =>
  vi.waitFor(() => expect(cures().status).toBe("done"), { timeout: 15_000, interval: 20 });

beforeEach(() => useApp.getState().openDesign(example("house-wideband-fails")));
afterEach(() => cures().clear());

describe("a search for cures", () => {
  test("tells how far it is, and ends with proposals that keep what is not changed as it was", async () => {
    const { design } = useApp.getState();
    cures().start();
    expect(cures().status).toBe("running");
    await finished();
    expect(cures().tried).toBeGreaterThan(0);
    const [best] = cures().proposals;
    if (!best) throw new Error("nothing was proposed");
    // Looked at from scratch: the promise must not lean on what the search remembers.
    const seen = report(evaluate(structuredClone(best.design)));
    expect(seen.findings.filter((f) => f.severity === "error")).toEqual([]);
    const kept = best.design.parts.filter((p) => design.parts.includes(p));
    expect(kept.length).toBeGreaterThan(design.parts.length / 2);
    expect(useApp.getState().design).toBe(design);
  });

  test("that is stopped finds nothing more", async () => {
    cures().start();
    cures().stop();
    expect(cures().status).toBe("stopped");
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(cures()).toMatchObject({ status: "stopped", tried: 0, proposals: [] });
  });

  test("closes a preview first, whose findings are not those of the design", () => {
    const { design, showPreview } = useApp.getState();
    const changed = rename(design, design.parts[0]?.id ?? "", "Other");
    if (changed.ok) showPreview({ title: "Other", design: changed.design, canApply: true });
    cures().start();
    expect(useApp.getState().preview).toBeNull();
    expect(cures().document).toBe(design);
  });

  test("ends with the design that it was for", () => {
    cures().start();
    useApp.getState().openDesign(example("house-universal"));
    expect(cures().status).toBe("idle");
  });
});

describe("a design that comes back from a worker", () => {
  test("is made of the very parts and wires that it shares with the one at work", () => {
    const own = example("house-universal");
    expect(withSharedObjects(structuredClone(own), own)).toEqual(own);
    expect(withSharedObjects(structuredClone(own), own).parts).toBe(own.parts);
    const edit = rename(own, own.parts[0]?.id ?? "", "Other");
    if (!edit.ok) throw new Error(edit.reason);
    const shared = withSharedObjects(structuredClone(edit.design), own);
    expect(shared).toEqual(edit.design);
    expect(shared.parts[0]).not.toBe(own.parts[0]);
    expect(shared.parts[1]).toBe(own.parts[1]);
    expect(shared.wires).toBe(own.wires);
  });
});
