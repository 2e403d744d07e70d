/**
 * Nothing newer than the oldest supported browsers in what is written here. When each browser learned what comes from
 * MDN's tables (@mdn/browser-compat-data).
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { buildTargets, SUPPORTED } from "../../src/build/supported.ts";
import { tooNewInScript } from "./scripts.ts";

/** Methods of our own and of zod that are called like newer ones of the language, whose types are ES2023 anyway. */
const NAMESAKES = ["Set.prototype.union", "Iterator.prototype.drop", "Iterator.prototype.take"];

const source = (folder: string) =>
  (readdirSync(folder, { recursive: true }) as string[]).map((name) => join(folder, name));

describe("what is written here", () => {
  test("calls nothing that a supported browser does not know", () => {
    const found = source("src")
      .filter((path) => /\.tsx?$/.test(path) && path !== join("src", "cli.ts"))
      .flatMap((path) => tooNewInScript(path, readFileSync(path, "utf8")).map((f) => ({ path, ...f })))
      .filter(({ what }) => !NAMESAKES.includes(what))
      .map(({ path, line, what, missingIn }) => `${path}:${line} ${what}: not in ${missingIn}`);
    expect(found).toEqual([]);
  });

  test.each([
    ["URL.canParse(href)", "URL.canParse"],
    ["Object.groupBy(parts, kind)", "Object.groupBy"],
    ["const { promise } = Promise.withResolvers<void>();", "Promise.withResolvers"],
    ["requestIdleCallback(draw)", "requestIdleCallback"],
    ["window.requestIdleCallback(draw)", "requestIdleCallback"],
    ["AbortSignal.any([a, b])", "AbortSignal.any"],
    ["new Intl.DurationFormat('en')", "Intl.DurationFormat"],
    ["new Set(a).isSubsetOf(b)", "Set.prototype.isSubsetOf"],
    ["element.checkVisibility()", "Element.prototype.checkVisibility"],
    ["/[\\p{L}--[a-z]]/v.test(text)", "RegExp with the flag v"],
  ])("%s would be found", (code, what) => {
    expect(tooNewInScript("written.ts", code).map((f) => f.what)).toContain(what);
  });

  test.each([
    [
      "known to all",
      "structuredClone(a); a.toSorted(); a.at(-1); navigator.locks.request(name, work); a.findLast(f);",
    ],
    ["an own name", "const scheduler = make(); scheduler.run(); function navigation() {} navigation();"],
    ["asked for first", "if (typeof requestIdleCallback === 'function') requestIdleCallback(draw);"],
    ["asked for in place", "navigator.userAgentData?.platform; element.checkVisibility?.();"],
    [
      "a type only",
      "type Later = PromiseWithResolvers<void>; function f(a: Later): CloseWatcher | null { return a; }",
    ],
  ])("%s is let pass", (_, code) => {
    expect(tooNewInScript("written.ts", code)).toEqual([]);
  });
});

test("the README and the page that does not start name the versions that package.json declares", () => {
  const readme = readFileSync("README.md", "utf8");
  const page = readFileSync("index.html", "utf8").replace(/\s+/g, " ");
  const of = (name: string) => SUPPORTED.find((s) => s.name === name)?.version;
  expect(of("ios_saf")).toBe(of("safari"));
  expect([of("edge"), of("and_chr")]).toEqual([of("chrome"), of("chrome")]);
  expect(readme).toContain(
    `Safari and iPadOS from ${of("safari")}, Firefox from ${of("firefox")}, and Chrome, Edge and Android from ${of("chrome")}`,
  );
  expect(page).toContain(
    `Safari or iPadOS ${of("safari")}, Firefox ${of("firefox")}, or Chrome, Edge or Android ${of("chrome")}, or later`,
  );
  expect(buildTargets()).toEqual(["safari16.4", "ios16.4", "firefox115", "chrome111", "edge111"]);
});

test("the language that the compiler knows is no newer than the browsers", () => {
  // ES2023 added toSorted, toReversed, with and findLast: Safari 16.0, Firefox 115, Chrome 110, by MDN's tables.
  // ES2024 added Object.groupBy and Promise.withResolvers, which come later in all three.
  const { compilerOptions } = JSON.parse(readFileSync("tsconfig.json", "utf8"));
  expect(compilerOptions.lib).toEqual(["ES2023", "DOM", "DOM.Iterable"]);
});
