/** What is to be said of a package: its licence in full, and where its source is where the licence asks for that. */
import { readdirSync, readFileSync } from "node:fs";

/** A package as Vite lists it. */
export type Installed = {
  readonly name: string;
  readonly version: string;
  /** After SPDX. */
  readonly identifier?: string;
  readonly text?: string;
};

export type LicenceNotice = Required<Installed> & { readonly source?: string };

type Manifest = {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly author?: string | { readonly name: string };
  readonly repository?: { readonly url: string };
};

/** A package that is not found in the bundle, in the same form as those that are. */
export function installed(name: string): Installed {
  const { version, license } = manifestOf(name);
  const file = readdirSync(folderOf(name)).find((each) => /^licen[cs]e/i.test(each));
  const text = file === undefined ? {} : { text: readFileSync(new URL(file, folderOf(name)), "utf8") };
  return { name, version, identifier: license, ...text };
}

/** Throws where a licence's text is not to be had: what asks to be shipped with its text is not shipped without. */
export function noticeOf({ name, version, identifier, text }: Installed): LicenceNotice {
  if (identifier === undefined) throw new Error(`${name} does not say under which licence it is.`);
  const notice = { name, version, identifier, text: fullText(name, identifier, text) };
  return identifier.startsWith("EPL-2.0") ? { ...notice, source: sourceOf(name, version) } : notice;
}

function fullText(name: string, identifier: string, text: string | undefined): string {
  if (text === undefined && identifier === "MIT")
    return `Copyright (c) ${authorOf(name)}\n\n${standard("MIT")}`;
  if (text === undefined) throw new Error(`${name} comes without the text of its licence, ${identifier}.`);
  // Some refer to the text of this licence only, which asks to be handed on in full.
  if (identifier === "Apache-2.0" && !text.includes("TERMS AND CONDITIONS"))
    return `${text}\n\n${standard(identifier)}`;
  // What the tool itself consists of is not shipped.
  return (text.split("# Licenses of bundled dependencies")[0] ?? text).trim();
}

function standard(licence: "MIT" | "Apache-2.0"): string {
  return readFileSync(new URL(`./texts/${licence}.txt`, import.meta.url), "utf8").trim();
}

function authorOf(name: string): string {
  const { author } = manifestOf(name);
  if (author === undefined) throw new Error(`${name} names no author.`);
  return typeof author === "string" ? author : author.name;
}

function sourceOf(name: string, version: string): string {
  const repository = manifestOf(name).repository?.url.replace(/^git\+|\.git$/g, "");
  if (repository === undefined) throw new Error(`${name} does not say where its source is.`);
  return `Used under the Eclipse Public License 2.0. Its source is at ${repository} and in the npm package ${name}, version ${version}.`;
}

function folderOf(name: string): URL {
  return new URL(`../../node_modules/${name}/`, import.meta.url);
}

function manifestOf(name: string): Manifest {
  return JSON.parse(readFileSync(new URL("package.json", folderOf(name)), "utf8"));
}
