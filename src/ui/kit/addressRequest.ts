/** What the address of the page asks for, read without touching the page. */
import { isLinkFragment } from "../../design/linkHealing.ts";

export type AddressRequest =
  /** An example by its key. */
  | { readonly type: "example"; readonly key: string }
  /** A share link: the fragment holds a design. */
  | { readonly type: "link"; readonly fragment: string }
  /** A practice case: "t1." and its name, or a seed with the design that it is made from. */
  | { readonly type: "training"; readonly fragment: string }
  /** Nothing in particular: whatever was open last. */
  | { readonly type: "last" };

const TRAINING = /^t\d+(\.|$)/;

/** Reads an address; a link wins over an example, and anything else means nothing in particular. */
export function addressRequestOf(href: string): AddressRequest {
  const url = parsed(href);
  if (!url) return { type: "last" };
  const { hash, searchParams } = url;
  const fragment = hash.replace(/^#/, "");
  // A practice case may carry a design of its own behind its mark.
  if (TRAINING.test(fragment)) return { type: "training", fragment };
  if (isLinkFragment(fragment)) return { type: "link", fragment };
  const key = searchParams.get("example")?.trim();
  return key ? { type: "example", key } : { type: "last" };
}

/** Not by URL.canParse, which Safari before 17 and Chrome before 120 do not have. */
function parsed(href: string): URL | null {
  try {
    return new URL(href);
  } catch {
    return null;
  }
}

/** The same address without what was asked for; other parameters stay. */
export function withoutAddressRequest(href: string): string {
  const url = new URL(href);
  url.searchParams.delete("example");
  url.hash = "";
  return url.href;
}

/** Address of the page with a design in its fragment. */
export function linkAddress(href: string, fragment: string): string {
  return `${withoutAddressRequest(href)}#${fragment}`;
}
