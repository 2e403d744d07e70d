/** The ways into the search for cures. */
import type { Finding } from "../../../findings/finding.ts";
import { type CureRequest, useCures } from "../../../store/cures.ts";
import { usePrices } from "../../../store/prices.ts";
import { showPane } from "../panes.ts";

/** Opens the pane and begins to search. */
export async function findCures(complaint: CureRequest = {}): Promise<void> {
  showPane("cures");
  // Ranked by the user's own prices, so these come first.
  await usePrices.getState().load();
  useCures.getState().start(complaint);
}

export function findCuresFor(finding: Finding): void {
  void findCures({ target: finding });
}
