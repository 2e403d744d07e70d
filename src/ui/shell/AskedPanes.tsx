/** Panes that are loaded after the first drawing; in the moment until they are there, they are empty. */
import { useAfterwards } from "./later.ts";

export function CuresPane() {
  const there = useAfterwards({ isWanted: true });
  return there && <there.CuresPane />;
}

export function FaultsPane() {
  const there = useAfterwards({ isWanted: true });
  return there && <there.FaultsPane />;
}
