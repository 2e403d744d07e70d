import type { Answer } from "./answer.ts";

/** Which carrier, where, and why just this one. */
export function Place({ found, which }: { readonly found: Answer; readonly which: string | undefined }) {
  return (
    <p>
      <strong>{found.carrier}</strong> at {found.place}
      {found.userBand === undefined ? "" : `, on user band ${found.userBand}`}
      {which ? <span className="quiet"> · {which}</span> : null}
    </p>
  );
}
