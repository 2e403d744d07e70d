/** Panes that are loaded after the first drawing; in the moment until they are there, they are empty. */
import { useAfterwards } from "./later.ts";

export function LaterCures() {
  const there = useAfterwards({ isWanted: true });
  return there && <there.CuresPane />;
}

export function LaterFaults() {
  const there = useAfterwards({ isWanted: true });
  return there && <there.FaultsPane />;
}
