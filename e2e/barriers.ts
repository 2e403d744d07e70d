/** What a machine can check of WCAG on the page as it stands. */
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

type Violations = Awaited<ReturnType<AxeBuilder["analyze"]>>["violations"];

/** Looks in both themes; in the dark only colours differ. `within` is for what comes on top of a page looked at before. */
export async function expectNoBarriers(page: Page, where: string, within = "html"): Promise<void> {
  await expect(page.locator(within).first()).toBeVisible();
  // Without the page of its own that it opens for frames, of which the app has none: in half the time.
  const look = () => new AxeBuilder({ page }).include(within).setLegacyMode(true);
  await page.emulateMedia({ colorScheme: "light" });
  expect(grave((await look().analyze()).violations, where)).toEqual([]);
  await page.emulateMedia({ colorScheme: "dark" });
  const dark = await look().withRules(["color-contrast"]).analyze();
  expect(grave(dark.violations, `${where}, dark`)).toEqual([]);
}

function grave(violations: Violations, where: string): readonly string[] {
  return violations
    .filter((v) => v.impact === "serious" || v.impact === "critical")
    .map((v) => `${where}: ${v.id}: ${v.nodes.map((n) => `${n.target} ${n.failureSummary}`).join("; ")}`);
}
