/** What a machine can check of WCAG on the page as it stands. */
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

type Violations = Awaited<ReturnType<AxeBuilder["analyze"]>>["violations"];

export async function expectNoBarriers(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(grave(violations, where)).toEqual([]);
}

/** The same, and once more in the dark, where only colours differ. */
export async function expectNoBarriersInBothThemes(page: Page, where: string): Promise<void> {
  await page.emulateMedia({ colorScheme: "light" });
  await expectNoBarriers(page, where);
  await page.emulateMedia({ colorScheme: "dark" });
  const { violations } = await new AxeBuilder({ page }).withRules(["color-contrast"]).analyze();
  expect(grave(violations, `${where}, dark`)).toEqual([]);
}

function grave(violations: Violations, where: string): readonly string[] {
  return violations
    .filter((v) => v.impact === "serious" || v.impact === "critical")
    .map((v) => `${where}: ${v.id}: ${v.nodes.map((n) => `${n.target} ${n.failureSummary}`).join("; ")}`);
}
