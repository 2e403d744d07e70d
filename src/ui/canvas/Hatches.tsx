/** The hatchings that mark collisions beside their colour; defined once for all strips. */
export function Hatches() {
  return (
    <svg className="hatches" width={0} height={0} aria-hidden="true">
      <defs>
        <pattern
          id="hatch-hit"
          patternUnits="userSpaceOnUse"
          width={3.2}
          height={3.2}
          patternTransform="rotate(45)"
        >
          <rect className="hatch-hit-ground" width={3.2} height={3.2} />
          <rect className="hatch-line" width={1.1} height={3.2} />
        </pattern>
        <pattern
          id="hatch-touched"
          patternUnits="userSpaceOnUse"
          width={3.6}
          height={3.6}
          patternTransform="rotate(-45)"
        >
          <rect className="hatch-touched-line" width={1.3} height={3.6} />
        </pattern>
      </defs>
    </svg>
  );
}
