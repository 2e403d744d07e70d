// @vitest-environment happy-dom
/** The list of own designs: what the storage refused is marked, for it goes with this window. */
import { cleanup, render, screen, within } from "@testing-library/react";
import { Tooltip } from "radix-ui";
import { afterEach, expect, test } from "vitest";
import { useDocuments } from "../../../../src/store/documents/documents.ts";
import { DesignList } from "../../../../src/ui/features/documents/DesignList.tsx";

afterEach(cleanup);

test("a design that only this window holds says so, the others do not", () => {
  const head = { parts: 3, changed: 1_700_000_000_000, revision: 1 };
  useDocuments.setState({
    refresh: async () => undefined,
    list: [
      { ...head, id: "a", title: "Kept" },
      { ...head, id: "b", title: "Refused", onlyHere: true },
    ],
  });
  render(
    <Tooltip.Provider>
      <DesignList onDone={() => undefined} />
    </Tooltip.Provider>,
  );
  const entry = (title: string) =>
    screen.getAllByRole("listitem").find((li) => li.textContent?.startsWith(title));
  const [kept, refused] = [entry("Kept"), entry("Refused")];
  if (!kept || !refused) throw new Error("both designs are listed");
  expect(within(refused).getByText("not saved: this window only")).toBeTruthy();
  expect(within(kept).queryByText("not saved: this window only")).toBeNull();
});
