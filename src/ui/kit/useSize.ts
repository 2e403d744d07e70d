import { useCallback, useRef, useState } from "react";

export type ElementSize = { readonly width: number; readonly height: number };

/** Size of an element as it is laid out, followed as it changes; null before the first layout. [px] */
export function useSize(): readonly [(element: Element | null) => void, ElementSize | null] {
  const [size, setSize] = useState<ElementSize | null>(null);
  const observer = useRef<ResizeObserver | null>(null);
  const attach = useCallback((element: Element | null) => {
    observer.current?.disconnect();
    observer.current = null;
    if (!element) return;
    observer.current = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const { width, height } = entry.contentRect;
      setSize({ width: Math.round(width), height: Math.round(height) });
    });
    observer.current.observe(element);
  }, []);
  return [attach, size];
}
