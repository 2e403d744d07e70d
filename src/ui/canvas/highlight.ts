/** What the canvas lights up: each card and wire asks only for itself, so a step redraws two cards and no more. */
import { create } from "zustand";

/** Where a way is lost or doubtful, and the word for it on a mark. */
export type Trouble = { readonly kind: "lost" | "doubtful"; readonly mark: string };

/** A way over the canvas: the parts it passes in their order, the wires between, and where it is in trouble. */
export type LitRoute = {
  readonly stops: readonly { readonly part: string }[];
  readonly wires: readonly string[];
  readonly trouble: (Trouble & { readonly at: number }) | null;
};

type Lit = {
  readonly isLit: boolean;
  readonly parts: ReadonlyMap<string, HighlightedPart>;
  readonly wires: ReadonlySet<string>;
};

export type HighlightedPart = {
  /** Its number on the way, from 1. */
  readonly number: number;
  readonly isHere: boolean;
  readonly trouble: Trouble | null;
};

const DARK: Lit = { isLit: false, parts: new Map(), wires: new Set() };

const useLit = create<Lit>(() => DARK);

export function highlightRoute(route: LitRoute, stop: number): void {
  const parts = new Map<string, HighlightedPart>();
  route.stops.forEach(({ part }, n) => {
    const known = parts.get(part);
    parts.set(part, {
      number: known?.number ?? n + 1,
      isHere: n === stop || known?.isHere === true,
      trouble: route.trouble?.at === n ? route.trouble : (known?.trouble ?? null),
    });
  });
  useLit.setState({ isLit: true, parts: keepSame(parts), wires: new Set(route.wires) });
}

export function clearHighlight(): void {
  useLit.setState(DARK);
}

export function useHasHighlight(): boolean {
  return useLit((s) => s.isLit);
}

export function useHighlightedPart(id: string): HighlightedPart | undefined {
  return useLit((s) => s.parts.get(id));
}

export function useIsWireHighlighted(id: string): boolean {
  return useLit((s) => s.wires.has(id));
}

/** The part where one stands. */
export function useHighlightedHere(): string | undefined {
  return useHighlight((parts) => [...parts].find(([, { isHere }]) => isHere)?.[0]);
}

/** Something about the parts on the way, in their order; asks again when that something is another. */
export function useHighlight<T>(about: (parts: ReadonlyMap<string, HighlightedPart>) => T): T {
  return useLit((s) => about(s.parts));
}

/** Whether a walk goes along all of these wires. */
export function useAreWiresHighlighted(ids: readonly string[]): boolean {
  return useLit((s) => s.isLit && ids.every((id) => s.wires.has(id)));
}

/** Parts that look as before keep their object. */
function keepSame(parts: Map<string, HighlightedPart>): Map<string, HighlightedPart> {
  const before = useLit.getState().parts;
  for (const [id, now] of parts) {
    const old = before.get(id);
    if (
      old &&
      old.number === now.number &&
      old.isHere === now.isHere &&
      old.trouble?.mark === now.trouble?.mark
    )
      parts.set(id, old);
  }
  return parts;
}
