/**
 * Licences of what is shipped. Which packages are in it is read from the source maps of all that was built: page, worker
 * and service worker; not from the list that is checked.
 */
import { execFile } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type LicenceNotice, noticeOf } from "../../src/build/licenceTexts.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const outDir = join(root, ".cache/licences");
const notices: LicenceNotice[] = [];

beforeAll(async () => {
  // Apart from the test runner, which would have it build for tests.
  const { NODE_ENV: _, ...env } = process.env;
  const order = ["build", "--sourcemap", "--outDir", outDir, "--emptyOutDir", "--logLevel", "warn"];
  await promisify(execFile)(process.execPath, [join(root, "node_modules/vite/bin/vite.js"), ...order], {
    cwd: root,
    env,
  });
  const list: Record<string, () => readonly LicenceNotice[]> = await import(
    pathToFileURL(join(outDir, "licences.js")).href
  );
  for (const read of Object.values(list)) notices.push(...read());
}, 180_000);
afterAll(() => rmSync(outDir, { recursive: true, force: true }));

const files = (end: string) =>
  readdirSync(outDir, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(end));
const built = (name: string) => readFileSync(join(outDir, name), "utf8");

/** Folder of the package that a source lies in, such as "node_modules/zod"; nested ones keep their whole way. */
function packageOf(source: string): string | undefined {
  return /(?:^|\/)(node_modules\/(?:.*\/node_modules\/)?(?:@[^/]+\/)?[^/]+)\//.exec(source)?.[1];
}

function namedPackages(): ReadonlySet<string> {
  const sources = files(".map").flatMap((name): readonly string[] => JSON.parse(built(name)).sources);
  return new Set(sources.flatMap((source) => packageOf(source) ?? []));
}

/** Packages of the typefaces that are shipped: known by their bytes, since files keep no map. */
function typefaces(): readonly string[] {
  const folder = "node_modules/@fontsource-variable/inter";
  const own = readdirSync(join(root, folder, "files")).map((name) =>
    readFileSync(join(root, folder, "files", name)),
  );
  const shipped = files(".woff2").map((name) => readFileSync(join(outDir, name)));
  return shipped.length > 0 && shipped.every((font) => own.some((each) => each.equals(font))) ? [folder] : [];
}

const titles = () => notices.map(({ name, version }) => `${name} ${version}`);

function titleOf(folder: string): string {
  const { name, version } = JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8"));
  return `${name} ${version}`;
}

test("every script that is shipped says by its map what it is made of, or is a file of a package as it is", () => {
  const unmapped = files(".js").filter((name) => !existsSync(join(outDir, `${name}.map`)));
  const worker = readFileSync(join(root, "node_modules/elkjs/lib/elk-worker.min.js"), "utf8");
  // Beside them the bundler puts a few lines of its own, as it does into every script: they have no source and no map.
  const isGlue = (name: string) => /^assets\/rolldown-runtime-/.test(name) && built(name).length < 2000;
  expect(unmapped.filter((name) => built(name) !== worker && !isGlue(name))).toEqual([]);
});

test("every package in a script, worker or service worker is named with its version and the text of its licence", () => {
  const packages = [...namedPackages()].map(titleOf);
  // A few that must be found, so that a map read wrongly is noticed.
  expect(packages.map((title) => title.split(" ")[0])).toEqual(
    expect.arrayContaining(["react-dom", "@xyflow/react", "zod", "elkjs", "workbox-precaching"]),
  );
  expect(titles()).toEqual(expect.arrayContaining(packages));
  for (const { name, text } of notices) expect(text.length, name).toBeGreaterThan(200);
});

test("no package is named that is not shipped; the tools leave lines of their own that no map tells of", () => {
  const packages = new Set([...namedPackages(), ...typefaces()].map(titleOf));
  const tools = ["vite", "rolldown", "vite-plugin-pwa"].map((name) => titleOf(`node_modules/${name}`));
  expect(titles().filter((title) => !packages.has(title) && !tools.includes(title))).toEqual([]);
});

// EPL-2.0, section 3.1 a: the source must be available, and the recipient told how to obtain it.
test("the layout library comes with the whole text of its licence and where its source is", () => {
  const elk = notices.find(({ name }) => name === "elkjs");
  const manifest = JSON.parse(readFileSync(join(root, "node_modules/elkjs/package.json"), "utf8"));
  const licence = readFileSync(join(root, "node_modules/elkjs/LICENSE.md"), "utf8");
  expect(elk?.text).toBe(licence.trim());
  expect(elk?.source).toContain(manifest.repository.url.replace(/\.git$/, ""));
  expect(elk?.source).toContain(`npm package elkjs, version ${manifest.version}`);
});

// Apache-2.0, section 4 a: recipients are given a copy of the licence.
test("what refers to the Apache licence is given its text in full", () => {
  for (const { name, text } of notices.filter(({ identifier }) => identifier === "Apache-2.0"))
    expect(text, name).toContain("TERMS AND CONDITIONS FOR USE, REPRODUCTION, AND DISTRIBUTION");
});

test("a package without a licence, or without its text, stops the build", () => {
  expect(() => noticeOf({ name: "react", version: "1.0.0" })).toThrow("under which licence");
  expect(() => noticeOf({ name: "react", version: "1.0.0", identifier: "ISC" })).toThrow("without the text");
});
