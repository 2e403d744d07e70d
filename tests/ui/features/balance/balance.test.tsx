// @vitest-environment happy-dom
/** Levelling as a user meets it. What the solver finds is tested with the solver; roles are those of WAI-ARIA 1.2. */
import { cleanup, fireEvent, render, screen, waitFor } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../../../src/design/design.ts";
import { evaluate } from "../../../../src/evaluate/evaluate.ts";
import { levelsOf } from "../../../../src/remedies/balance/aim.ts";
import { siteOf } from "../../../../src/remedies/site.ts";
import { useApp } from "../../../../src/store/app.ts";
import { useBalance } from "../../../../src/store/balance.ts";
import { BalanceForm } from "../../../../src/ui/features/balance/BalanceForm.tsx";
import { servicesDelivered } from "../../../../src/ui/features/balance/usual.ts";
import { draw } from "../../../draw.ts";

const app = () => useApp.getState();
const done = () => waitFor(() => expect(useBalance.getState().status).toBe("done"), { timeout: 15_000 });

/** One line with two plates, of which the nearer one gets 30 dB less than runs by, and the farther one nearly all. */
const riser = () =>
  draw(
    {
      uhf: ["aerial-uhf"],
      near: ["outlet-through", { tapLossDb: 30 }],
      run: ["cable", { lengthM: 10 }],
      far: ["outlet-end", { lossDb: 1 }],
    },
    "uhf.out > near.in, near.out > run.in, run.out > far.in",
  );

beforeEach(() => app().openDesign(riser()));
afterEach(() => {
  cleanup();
  useBalance.getState().clear();
});

describe("levelling all outlets", () => {
  test("shows what to fit, changes nothing until it is applied, and is one undo step", async () => {
    const { design } = app();
    const apart = () => {
      const means = levelsOf(siteOf(app().design), "tv").map((l) => l.meanDbuv);
      return Math.max(...means) - Math.min(...means);
    };
    const before = apart();
    let closed = false;
    render(<BalanceForm onDone={() => (closed = true)} />);
    fireEvent.change(screen.getByRole("textbox", { name: /Level at every outlet/ }), {
      target: { value: "50" },
    });
    fireEvent.click(screen.getByRole("button", { name: "Balance" }));
    await done();
    expect(app().design).toBe(design);
    expect(screen.getAllByText("replace").length).toBeGreaterThan(0);
    fireEvent.click(screen.getByRole("button", { name: "Apply" }));
    expect(closed).toBe(true);
    expect(apart()).toBeLessThan(before);
    app().undo();
    expect(app().design).toBe(design);
  });

  test.each(["", "loud", "500", "-3"])("says why “%s” is no level and does not start", (value) => {
    render(<BalanceForm onDone={() => undefined} />);
    fireEvent.change(screen.getByRole("textbox", { name: /Level at every outlet/ }), { target: { value } });
    expect(screen.getByRole("alert").textContent).toMatch(/from 20 to 120/);
    expect(screen.getByRole("button", { name: "Balance" })).toHaveProperty("disabled", true);
  });

  test("stops with the dialog", () => {
    const { unmount } = render(<BalanceForm onDone={() => undefined} />);
    fireEvent.click(screen.getByRole("button", { name: "Balance" }));
    expect(useBalance.getState().status).toBe("running");
    unmount();
    expect(useBalance.getState().status).toBe("stopped");
  });

  test("is offered for services that arrive somewhere only", () => {
    expect(servicesDelivered(app().evaluation)).toEqual(["tv"]);
    expect(servicesDelivered(evaluate(EMPTY_DESIGN))).toEqual([]);
    app().openDesign({ ...EMPTY_DESIGN });
    render(<BalanceForm onDone={() => undefined} />);
    expect(screen.queryByRole("button", { name: "Balance" })).toBeNull();
    expect(screen.getByText(/no level to balance/)).toBeTruthy();
  });
});
