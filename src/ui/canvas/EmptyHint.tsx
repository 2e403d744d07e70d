/** What stands on an empty canvas: a place for the first steps, which the page gives it. */
import type { ReactNode } from "react";
import { useApp } from "../../store/app.ts";

export function EmptyHint({ children }: { readonly children: ReactNode }) {
  const isEmpty = useApp((s) => s.evaluation.design.parts.length === 0);
  return isEmpty ? <div className="empty-hint">{children}</div> : null;
}
