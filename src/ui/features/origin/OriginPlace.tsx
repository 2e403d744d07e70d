import type { LevelOrigin } from "./levelOrigin.ts";

/** Which carrier, where, and why just this one. */
export function OriginPlace({
  found,
  which,
}: {
  readonly found: LevelOrigin;
  readonly which: string | undefined;
}) {
  return (
    <p>
      <strong>{found.carrier}</strong> at {found.place}
      {found.userBand === undefined ? "" : `, on user band ${found.userBand}`}
      {which ? <span className="quiet"> · {which}</span> : null}
    </p>
  );
}
