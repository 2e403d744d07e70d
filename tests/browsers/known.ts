/** What each browser knows since when, from MDN's tables, asked for the oldest browsers that the app works in. */
import tables, {
  type BrowserName,
  type Identifier,
  type SimpleSupportStatement,
} from "@mdn/browser-compat-data/forLegacyNode";
import { SUPPORTED } from "../../src/build/supported.ts";

export { tables };

/** Something that is used and that a supported browser does not know. */
export type TooNew = {
  readonly what: string;
  readonly line: number;
  /** "safari 16.4, chrome 111". */
  readonly missingIn: string;
};

const NAMES: Readonly<Record<string, BrowserName>> = { ios_saf: "safari_ios", and_chr: "chrome_android" };

/** The supported browsers that do not know it; empty where all do, and where the tables say nothing. */
export function missingIn(entry: Identifier | undefined): string {
  const support = entry?.__compat?.support;
  if (!support) return "";
  return SUPPORTED.filter(({ name, version }) => {
    // A name of browserslist that the tables do not have would silently ask for nothing.
    const statement = support[tableName(name)];
    if (statement === undefined) return false;
    return ![statement].flat().some((s) => isKnown(s, version));
  })
    .map(({ name, version }) => `${name} ${version}`)
    .join(", ");
}

function tableName(name: string): BrowserName {
  const known = NAMES[name] ?? (name in tables.browsers ? (name as BrowserName) : undefined);
  if (known === undefined) throw new Error(`MDN's tables have no browser “${name}”.`);
  return known;
}

/** Under its own name, without a switch that the user must set. */
function isKnown(statement: SimpleSupportStatement, version: string): boolean {
  const {
    version_added: added,
    version_removed: removed,
    flags,
    prefix,
    alternative_name: other,
  } = statement;
  if (typeof added !== "string" || added === "preview" || flags || prefix || other) return false;
  if (isNewer(added.replace("≤", ""), version)) return false;
  return typeof removed !== "string" || isNewer(removed.replace("≤", ""), version);
}

function isNewer(a: string, b: string): boolean {
  const [major = 0, minor = 0] = a.split(".").map(Number);
  const [otherMajor = 0, otherMinor = 0] = b.split(".").map(Number);
  return major > otherMajor || (major === otherMajor && minor > otherMinor);
}
