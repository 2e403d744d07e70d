import { createPortal } from "react-dom";
import { colourOf, HARM_TEXTURES, SERVICE_TEXTURE_KEYS, SERVICE_TEXTURES, type Texture } from "./textures.ts";

/**
 * Fills by service and marks of collisions, defined once for all strips, whatever draws them. They stand beside the
 * app: what is not shown defines nothing, and on paper the app is not shown.
 */
export function Hatches() {
  return createPortal(
    <svg className="hatches" width={0} height={0} aria-hidden="true">
      <defs>
        {SERVICE_TEXTURE_KEYS.map((key) => (
          <TexturePattern
            key={key}
            id={`fill-${key}`}
            texture={SERVICE_TEXTURES[key]}
            ground={colourOf(key)}
          />
        ))}
        <TexturePattern id="hatch-hit" texture={HARM_TEXTURES.hit} ground="var(--lost)" />
        <TexturePattern id="hatch-touched" texture={HARM_TEXTURES.touched} line="var(--warn)" />
      </defs>
    </svg>,
    document.body,
  );
}

/** A fill of one colour with the lines of a texture in another; without a ground it lies over something. */
function TexturePattern(props: {
  readonly id: string;
  readonly texture: Texture;
  readonly ground?: string;
  readonly line?: string;
}) {
  const { id, texture, ground, line = "var(--surface)" } = props;
  const { tile, lines, width, turn = 0 } = texture;
  return (
    <pattern
      id={id}
      patternUnits="userSpaceOnUse"
      width={tile}
      height={tile}
      patternTransform={`rotate(${turn})`}
    >
      {ground && <rect width={tile} height={tile} style={{ fill: ground }} />}
      {/* Over a service, a line needs a rim in the colour of the ground to be seen. */}
      {!ground && (
        <path d={lines} style={{ fill: "none", stroke: "var(--surface)", strokeWidth: 2 * width }} />
      )}
      {lines !== "" && <path d={lines} style={{ fill: "none", stroke: line, strokeWidth: width }} />}
    </pattern>
  );
}
