/** The oldest browsers that the app works in, as `browserslist` of package.json says: the one place to change them. */
import manifest from "../../package.json" with { type: "json" };

export type Supported = {
  /** The name as browserslist knows it. */
  readonly name: string;
  readonly version: string;
};

export const SUPPORTED: readonly Supported[] = manifest.browserslist.map((line) => {
  const [, name, version] = /^(\w+) >= ([\d.]+)$/.exec(line) ?? [];
  if (name === undefined || version === undefined)
    throw new Error(`browserslist in package.json: “${line}” is not of the form “name >= version”.`);
  return { name, version };
});

/** What the build calls them. Chrome on Android has the engine and the numbers of Chrome. */
const BUILD_NAMES: Readonly<Record<string, string>> = {
  safari: "safari",
  ios_saf: "ios",
  firefox: "firefox",
  chrome: "chrome",
  edge: "edge",
  and_chr: "chrome",
};

/** What the build must bring scripts and styles down to: "safari16.4". */
export function buildTargets(): string[] {
  return [...new Set(SUPPORTED.map(({ name, version }) => `${BUILD_NAMES[name] ?? name}${version}`))];
}
