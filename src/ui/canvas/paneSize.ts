import type { Size } from "./layout.ts";

export function sizeOf(element: HTMLElement): Size {
  // Where nothing is laid out (a hidden pane), some size is better than none.
  return { width: element.clientWidth || 800, height: element.clientHeight || 600 };
}
