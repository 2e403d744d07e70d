import { useCallback, useState } from "react";

const callbacks = new WeakMap<Element, (inSight: boolean) => void>();
let observer: IntersectionObserver | null = null;

/** One observer for all: of a list of thousands only what can be seen is drawn in full. */
function watch(element: Element, tell: (inSight: boolean) => void): () => void {
  observer ??= new IntersectionObserver((entries) => {
    for (const { target, isIntersecting } of entries) callbacks.get(target)?.(isIntersecting);
  });
  callbacks.set(element, tell);
  observer.observe(element);
  return () => {
    observer?.unobserve(element);
    callbacks.delete(element);
  };
}

/** Whether an element is in sight, or scrolled out of it. Attach the first as its `ref`. */
export function useInSight(): readonly [(element: Element | null) => (() => void) | undefined, boolean] {
  const [isInSight, setInSight] = useState(false);
  const attach = useCallback(
    (element: Element | null) => (element ? watch(element, setInSight) : undefined),
    [],
  );
  return [attach, isInSight];
}
