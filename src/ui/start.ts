/** What the address of the page asks for, read without touching the page. */

export type Wish =
  /** An example by its key. */
  | { readonly type: "example"; readonly key: string }
  /** A share link: the fragment holds a design. */
  | { readonly type: "link"; readonly fragment: string }
  /** A practice case: "t1." and its name, or a seed with the design that it is made from. */
  | { readonly type: "training"; readonly fragment: string }
  /** Nothing in particular: whatever was open last. */
  | { readonly type: "last" };

/** A share link starts with "d", a version number, and (unless it was cut short) a dot. */
const LINK = /^d\d+(\.|$)/;
const TRAINING = /^t\d+(\.|$)/;

/** Reads an address; a link wins over an example, and anything else means nothing in particular. */
export function wishOf(href: string): Wish {
  if (!URL.canParse(href)) return { type: "last" };
  const { hash, searchParams } = new URL(href);
  const fragment = hash.replace(/^#/, "");
  if (LINK.test(fragment)) return { type: "link", fragment };
  if (TRAINING.test(fragment)) return { type: "training", fragment };
  const key = searchParams.get("example")?.trim();
  return key ? { type: "example", key } : { type: "last" };
}

/** The same address without what was asked for; other parameters stay. */
export function withoutWish(href: string): string {
  const url = new URL(href);
  url.searchParams.delete("example");
  url.hash = "";
  return url.href;
}

/** Address of the page with a design in its fragment. */
export function linkAddress(href: string, fragment: string): string {
  return `${withoutWish(href)}#${fragment}`;
}
