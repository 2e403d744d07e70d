/** Which findings stand explained: view state of this window. */
import { create } from "zustand";
import type { Finding } from "../../findings/finding.ts";

const useOpened = create<{ readonly keys: ReadonlySet<string> }>(() => ({ keys: new Set() }));

/** The same while its figures change, so that an explanation stays open as one tries values. */
function keyOf({ rule, parts, wires, port, service }: Finding): string {
  return [rule, ...parts, ...wires, port ?? "", service ?? ""].join("|");
}

export function useExplained(finding: Finding): boolean {
  return useOpened((s) => s.keys.has(keyOf(finding)));
}

export function setExplained(finding: Finding, open: boolean): void {
  const keys = new Set(useOpened.getState().keys);
  if (open) keys.add(keyOf(finding));
  else keys.delete(keyOf(finding));
  useOpened.setState({ keys });
}
