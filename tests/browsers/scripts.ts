/** Finds in a script what a supported browser does not know: globals, their members, and methods of values. */
import type { Identifier } from "@mdn/browser-compat-data/forLegacyNode";
import { parseSync } from "vite";
import { missingIn, type TooNew, tables } from "./known.ts";

const api: Table = tables.api;
// The package types its tables as trees with a note at any node; these nodes hold none, only what lies below them.
const { builtins } = tables.javascript as unknown as { readonly builtins: Table };

/** Globals that are an object of an interface rather than the interface. */
const OBJECTS: Readonly<Record<string, string>> = {
  navigator: "Navigator",
  document: "Document",
  location: "Location",
  history: "History",
  crypto: "Crypto",
  performance: "Performance",
  screen: "Screen",
  localStorage: "Storage",
  sessionStorage: "Storage",
  indexedDB: "IDBFactory",
};

const WINDOWS = new Set(["window", "globalThis", "self"]);

/**
 * Whatever is newer than the supported browsers in `code`. What the script asks for first may be missing: by `?.`
 * there and then, by `typeof` or `in` anywhere in it.
 */
export function tooNewInScript(name: string, code: string): TooNew[] {
  const { program, errors } = parseSync(name, code);
  if (errors[0]) throw new Error(`${name}: ${errors[0].message}`);
  const { declared, askedFor } = namesIn(program);
  const found: TooNew[] = [];
  const check = (what: string, entry: Identifier | undefined, at: Node) => {
    const missing = missingIn(entry);
    if (missing === "" || askedFor.has(what.replace(/^.*\./, ""))) return;
    found.push({ what, missingIn: missing, line: lineAt(code, Number(at.start)) });
  };

  const visit = (node: Node): void => {
    if (node.type === "Literal" && isNode(node.regex)) checkPattern(node);
    if (node.type === "Identifier" && !declared.has(String(node.name)))
      check(String(node.name), globalEntry(String(node.name)), node);
    if (node.type === "NewExpression") checkNew(node);
    if (node.type === "MemberExpression" && !node.computed) checkMember(node);
    for (const child of valuesIn(node)) visit(child);
  };

  const checkPattern = (node: Node) => {
    const flags = String((node.regex as Node).flags);
    if (flags.includes("v"))
      check("RegExp with the flag v", entryOf(builtins, "RegExp", "unicodeSets"), node);
    if (flags.includes("d")) check("RegExp with the flag d", entryOf(builtins, "RegExp", "hasIndices"), node);
  };

  const checkNew = (node: Node) => {
    const callee = nameOf(node.callee);
    if (callee && !declared.has(callee)) check(`new ${callee}`, entryOf(api, callee, callee), node);
  };

  const checkMember = (node: Node) => {
    const member = nameOf(node.property);
    if (member === undefined || node.guarded) return;
    const owner = nameOf(node.object);
    if (owner !== undefined && WINDOWS.has(owner)) return check(member, globalEntry(member), node);
    const face = owner === undefined || declared.has(owner) ? undefined : (OBJECTS[owner] ?? owner);
    if (face !== undefined && (api[face] || builtins[face])) {
      const entry =
        entryOf(builtins, face, member) ??
        entryOf(api, face, `${member}_static`) ??
        entryOf(api, face, member);
      return check(`${owner}.${member}`, entry, node);
    }
    const newer = node.called ? NEW_MEMBERS.get(member) : undefined;
    if (newer) check(`${newer.owner}.prototype.${member}`, newer.entry, node);
  };

  visit(program as unknown as Node);
  return found;
}

/**
 * Methods of values that some supported browser has under no interface: called, the name alone gives them away.
 * Merely read, a name such as “side” says nothing.
 */
const NEW_MEMBERS: ReadonlyMap<string, { readonly owner: string; readonly entry: Identifier }> = newMembers();

function newMembers() {
  const members = new Map<string, { readonly owner: string; readonly entry: Identifier }>();
  const known = new Set<string>();
  const intl = (builtins.Intl ?? {}) as Table;
  for (const [owner, face] of [
    ...Object.entries(api),
    ...Object.entries(builtins),
    ...Object.entries(intl),
  ]) {
    // What belongs to an interface that is itself too new cannot be had without naming the way to it.
    if (owner === "__compat" || missingIn(face) !== "") continue;
    for (const [name, entry] of Object.entries(face as Table)) {
      if (name === owner || !/^[a-zA-Z]\w*$/.test(name) || /_(static|event)$/.test(name)) continue;
      if (missingIn(entry) === "") known.add(name);
      else members.set(name, { owner, entry });
    }
  }
  for (const name of known) members.delete(name);
  return members;
}

type Table = Readonly<Record<string, Identifier>>;

function entryOf(table: Table, face: string, member: string): Identifier | undefined {
  const entry: Table | undefined = Object.hasOwn(table, face) ? (table[face] as Table) : undefined;
  return entry && Object.hasOwn(entry, member) ? entry[member] : undefined;
}

function globalEntry(name: string): Identifier | undefined {
  if (Object.hasOwn(builtins, name)) return builtins[name];
  return (Object.hasOwn(api, name) ? api[name] : undefined) ?? entryOf(api, "Window", name);
}

type Node = { type: string; guarded?: boolean; called?: boolean; [key: string]: unknown };

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

const nameOf = (value: unknown): string | undefined =>
  isNode(value) && value.type === "Identifier" ? String(value.name) : undefined;

/** Nodes that only name something or only say its type. */
const IDLE = new Set([
  "ImportDeclaration",
  "TSInterfaceDeclaration",
  "TSTypeAliasDeclaration",
  "JSXIdentifier",
]);
const EXPORTS = new Set(["ExportNamedDeclaration", "ExportAllDeclaration"]);
/** Nodes with a name that is a member's, unless it stands in brackets. */
const NAMING = new Set([
  "MemberExpression",
  "Property",
  "PropertyDefinition",
  "MethodDefinition",
  "AccessorProperty",
]);
const TYPES = new Set([
  "typeAnnotation",
  "typeParameters",
  "typeArguments",
  "returnType",
  "implements",
  "label",
]);

/** The nodes below one in which something is used: without types, and without names that only name. */
function valuesIn(node: Node): Node[] {
  if (IDLE.has(node.type)) return [];
  if (EXPORTS.has(node.type)) return [node.declaration].filter(isNode);
  const naming = !node.computed && NAMING.has(node.type);
  const children: Node[] = [];
  for (const [key, value] of Object.entries(node)) {
    if (typeof value !== "object" || value === null || TYPES.has(key)) continue;
    if (naming && (key === "property" || (key === "key" && !node.shorthand))) continue;
    for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) children.push(child);
  }
  if (node.type === "CallExpression" && isNode(node.callee)) node.callee.called = true;
  if (node.optional) for (const child of [node.object, node.callee]) if (isNode(child)) child.guarded = true;
  return children;
}

/** The names that a script gives to something of its own, and those that it asks for before it uses them. */
function namesIn(program: unknown) {
  const declared = new Set<string>();
  const askedFor = new Set<string>();
  const bind = (pattern: unknown): void => {
    if (Array.isArray(pattern)) for (const one of pattern) bind(one);
    if (!isNode(pattern)) return;
    if (pattern.type === "Identifier") declared.add(String(pattern.name));
    else for (const key of ["left", "argument", "value", "elements", "properties"]) bind(pattern[key]);
  };
  const visit = (node: Node): void => {
    for (const key of ["id", "local", "param", "params"]) if (node[key]) bind(node[key]);
    const { type, operator, argument, left } = node;
    if (type === "UnaryExpression" && operator === "typeof" && isNode(argument))
      askedFor.add(nameOf(argument) ?? nameOf(argument.property) ?? "");
    if (type === "BinaryExpression" && operator === "in" && isNode(left)) askedFor.add(String(left.value));
    for (const key in node) {
      const value = node[key];
      if (Array.isArray(value)) value.filter(isNode).forEach(visit);
      else if (isNode(value)) visit(value);
    }
  };
  if (isNode(program)) visit(program);
  return { declared, askedFor };
}

function lineAt(code: string, offset: number): number {
  return code.slice(0, offset).split("\n").length;
}
