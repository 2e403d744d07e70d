/**
 * Contrast of the colour tokens against WCAG 2.2: success criteria 1.4.3 (text, 4.5 : 1) and
 * 1.4.11 (graphics and controls, 3 : 1); relative luminance as defined in its glossary.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const css = readFileSync(new URL("../../../src/ui/kit/theme.css", import.meta.url), "utf8");

type Theme = "light" | "dark";

function token(name: string, theme: Theme): string {
  const match = new RegExp(`${name}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)`).exec(css);
  const colour = theme === "light" ? match?.[1] : match?.[2];
  if (!colour) throw new Error(`${name} is not a token of theme.css`);
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

  test.each(["--line-strong", "--focus", "--danger"])("%s stands out from the surfaces by 3 : 1", (name) => {
    for (const ground of ["--surface", "--surface-2", "--canvas"]) {
      expect(contrast(token(name, theme), token(ground, theme))).toBeGreaterThanOrEqual(3);
    }
  });
});

test("black on white has the contrast that WCAG names as the greatest, 21 : 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
});
