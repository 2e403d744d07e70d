/** Nothing newer than the oldest supported browsers in what is shipped, libraries included; after MDN's tables, too. */
import { build, type Rolldown } from "vite";
import { beforeAll, describe, expect, test } from "vitest";
import type { TooNew } from "./known.ts";
import { tooNewInScript } from "./scripts.ts";
import { tooNewInStyle } from "./styles.ts";

/** Methods that are called like newer ones of the language. */
const NAMESAKES: Readonly<Record<string, string>> = {
  "Set.prototype.union": "a type of schema of zod",
  "Iterator.prototype.drop": "the store of documents",
  "Iterator.prototype.take": "the store of documents, and readings of the fault finder",
  "ArrayBuffer.prototype.resize": "a panel between dividers, with a method of its own",
  "Iterator.prototype.toArray": "a list of the drag library, with a method of its own",
  "EventTarget.prototype.when": "a condition of a check of zod",
};

/** Newer things in libraries that get on without. */
const WITHOUT: Readonly<Record<string, string>> = {
  "navigator.connection": "React asks for it by && and takes a usual speed",
  "Element.prototype.startViewTransition":
    "only for React's transitions of views, which the app does not use",
  "Error.captureStackTrace": "zod takes it from a copy that is null where it is missing",
};

/** What a browser that does not know it leaves out, and nothing is lost. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  cursor: "a tablet shows no pointer",
  resize: "a tablet scrolls a field of text instead",
  "text-size-adjust": "has a prefix in Safari; elsewhere nothing is enlarged unasked",
  "scrollbar-color": "scroll bars then look as the browser draws them",
  "content-visibility": "lists only scroll faster with it",
  "contain-intrinsic-size": "goes with content-visibility",
  "@page": "named pages print in the size that the user chose",
  size: "belongs to @page",
  "text-decoration": "the line is there, only not dotted",
  "print-color-adjust": "has a prefix in Chrome; where colours are left out, hatches and words say the same",
};

const isLeftOut = ({ what }: TooNew) => (what.split(": ")[0] ?? "") in LEFT_OUT;

describe("what is shipped", () => {
  let files: Rolldown.OutputBundle[string][] = [];
  beforeAll(async () => {
    // Otherwise the libraries' editions for developers would be looked at.
    const { NODE_ENV } = process.env;
    process.env.NODE_ENV = "production";
    const built = await build({ logLevel: "error", build: { write: false } });
    process.env.NODE_ENV = NODE_ENV;
    files = [built].flat().flatMap((one) => ("output" in one ? one.output : []));
  }, 120_000);

  test("calls nothing that a supported browser does not know", () => {
    const scripts = files.flatMap((file) => {
      if (file.type === "chunk") return [{ name: file.fileName, code: file.code }];
      return file.fileName.endsWith(".js") ? [{ name: file.fileName, code: String(file.source) }] : [];
    });
    expect(scripts.length).toBeGreaterThan(2);
    const found = scripts
      // Compiled from Java to the language of 2009, and slow to read.
      .filter(({ name }) => !name.includes("elk-worker.min"))
      .flatMap(({ name, code }) => tooNewInScript(name, code))
      .filter(({ what }) => !(what in NAMESAKES) && !(what in WITHOUT));
    expect(found).toEqual([]);
  });

  test("styles use nothing that a supported browser does not know", () => {
    const styles = files.flatMap((file) =>
      file.type === "asset" && file.fileName.endsWith(".css") ? [String(file.source)] : [],
    );
    expect(styles.length).toBeGreaterThan(0);
    expect(styles.flatMap((code) => tooNewInStyle(code)).filter((f) => !isLeftOut(f))).toEqual([]);
  });

  test.each([
    ["p:has(b) { color: red }", ":has"],
    ["p { text-wrap: balance }", "text-wrap"],
    ["p { color: light-dark(#000, #fff) }", "color: light-dark"],
    ["p { & b { color: red } }", "&"],
    ["@starting-style { p { color: red } }", "@starting-style"],
    ["@media (prefers-reduced-transparency) { p { color: red } }", "@media (prefers-reduced-transparency)"],
    ["p { width: round(up, 2px, 3px) }", "width: round"],
  ])("%s would be found", (code, what) => {
    expect(tooNewInStyle(code).map((f) => f.what)).toContain(what);
  });

  test.each([
    "p { height: 100dvh; color: color-mix(in srgb, red, blue); inset: 0; translate: 1px }",
    "@supports (field-sizing: content) { p { field-sizing: content } }",
    "p { -webkit-user-select: none; user-select: none }",
    "@container (min-width: 400px) { p:is(.a, .b):focus-visible { overflow: clip } }",
  ])("%s is let pass", (code) => {
    expect(tooNewInStyle(code)).toEqual([]);
  });
});
