/**
 * Contrast of the colour tokens against WCAG 2.2: success criteria 1.4.3 (text, 4.5 : 1) and
 * 1.4.11 (graphics and controls, 3 : 1); relative luminance as defined in its glossary.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { HARM_TEXTURES, SERVICE_TEXTURES } from "../../../src/ui/canvas/textures.ts";

const css = readFileSync(new URL("../../../src/ui/kit/theme.css", import.meta.url), "utf8");

type Theme = "light" | "dark";

function token(name: string, theme: Theme): string {
  return tokenIn(css, name, theme);
}

function tokenIn(sheet: string, name: string, theme: Theme): string {
  const match = new RegExp(`${name}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)`).exec(sheet);
  const colour = theme === "light" ? match?.[1] : match?.[2];
  if (!colour) throw new Error(`${name} is not a token of the sheet`);
  return colour;
}

/** Relative luminance of an sRGB colour (WCAG 2.2 glossary). */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}

function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

const TEXT: readonly [string, string][] = [
  ["--ink", "--canvas"],
  ["--ink", "--surface-3"],
  ["--ink-2", "--canvas"],
  ["--ink-2", "--surface"],
  ["--ink-2", "--surface-2"],
  ["--ink-2", "--surface-3"],
  ["--ink-on-accent", "--accent"],
  ["--accent", "--surface"],
  ["--accent", "--surface-2"],
  ["--accent", "--accent-soft"],
  ["--ink", "--accent-soft"],
  ["--danger", "--surface"],
  ["--danger", "--surface-2"],
  ["--danger", "--danger-soft"],
  ["--warn", "--surface"],
  ["--warn", "--warn-soft"],
  ["--ok", "--surface"],
  ["--ok", "--ok-soft"],
  ["--note", "--note-soft"],
];

const SERVICES = [
  "tv",
  "dab",
  "fm",
  "sat-v",
  "sat-h",
  "sat-vl",
  "sat-vh",
  "sat-hl",
  "sat-hh",
  "sat-stack",
  "mobile",
  "cordless",
];

describe.each(["light", "dark"] as const)("in the %s theme", (theme) => {
  test.each(TEXT)("text in %s on %s reaches 4.5 : 1", (front, back) => {
    expect(contrast(token(front, theme), token(back, theme))).toBeGreaterThanOrEqual(4.5);
  });

  test.each(SERVICES)("the colour of service %s stands out from every ground by 3 : 1", (service) => {
    for (const ground of ["--surface", "--surface-2", "--canvas"]) {
      expect(contrast(token(`--service-${service}`, theme), token(ground, theme))).toBeGreaterThanOrEqual(3);
    }
  });

  test.each(["--line-strong", "--focus", "--danger", "--lost"])(
    "%s stands out from the surfaces by 3 : 1",
    (name) => {
      for (const ground of ["--surface", "--surface-2", "--canvas"]) {
        expect(contrast(token(name, theme), token(ground, theme))).toBeGreaterThanOrEqual(3);
      }
    },
  );

  // TV is the one plain fill. Fine lines merge into the mean of what they send out (Talbot’s law): of a hatching
  // that is 1.5 wide in 3.4, 44 % is ground. 1.5 : 1 is our own bound, half of what WCAG asks beside a ground.
  test("what is lost differs from TV in lightness as well as in texture", () => {
    const merged = 0.56 * luminance(token("--lost", theme)) + 0.44 * luminance(token("--surface", theme));
    const tv = luminance(token("--service-tv", theme));
    const [low, high] = [merged, tv].sort((x, y) => x - y);
    expect(((high ?? 0) + 0.05) / ((low ?? 0) + 0.05)).toBeGreaterThanOrEqual(1.5);
  });
});

/** WCAG 2.2, 1.4.1: colour is never the only way to tell two apart. */
describe("fills", () => {
  const all = [...Object.entries(SERVICE_TEXTURES), ...Object.entries(HARM_TEXTURES)];

  test("no two services, and neither loss of margin nor of a carrier, have one texture", () => {
    const looks = all.map(([, { tile, lines, turn = 0 }]) => `${tile} ${lines} ${turn}`);
    expect(new Set(looks).size).toBe(looks.length);
  });

  test.each(all)(
    "%s shows its texture from 12 px on: a whole square of it has room",
    (_, { tile, turn = 0 }) => {
      // A square of 8 px fits into one of 12; turned by half a right angle, one of 12 / √2 = 8.49 px.
      expect(tile).toBeLessThanOrEqual(turn === 0 ? 12 : 8.48);
    },
  );

  test("only what collides slants", () => {
    for (const texture of Object.values(SERVICE_TEXTURES)) expect(texture.turn).toBeUndefined();
    expect(Math.sign(HARM_TEXTURES.hit.turn ?? 0)).toBe(1);
    expect(Math.sign(HARM_TEXTURES.touched.turn ?? 0)).toBe(-1);
  });
});

/** WCAG 2.2, 1.4.6 (7 : 1 for text), and for lines as much as 1.4.3 asks of text. */
describe.each(["light", "dark"] as const)("where more contrast is asked for, in the %s theme", (theme) => {
  const more = readFileSync(new URL("../../../src/ui/kit/contrast.css", import.meta.url), "utf8");
  const strong = (name: string) => tokenIn(more, name, theme);

  test.each(["--ink", "--ink-2", "--accent", "--danger", "--warn", "--ok", "--note"])(
    "words in %s reach 7 : 1 on every surface",
    (name) => {
      for (const ground of ["--surface", "--surface-2", "--canvas"])
        expect(contrast(strong(name), token(ground, theme))).toBeGreaterThanOrEqual(7);
    },
  );

  test.each(["--line", "--line-strong", "--focus"])("%s reaches 4.5 : 1", (name) => {
    for (const ground of ["--surface", "--surface-2", "--canvas"])
      expect(contrast(strong(name), token(ground, theme))).toBeGreaterThanOrEqual(4.5);
  });
});

test("black on white has the contrast that WCAG names as the greatest, 21 : 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
});
