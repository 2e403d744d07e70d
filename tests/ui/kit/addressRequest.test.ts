/** Addresses: parts named as in RFC 3986 (query 3.4, fragment 3.5). The forms of address are our own. */
import { describe, expect, test } from "vitest";
import { addressRequestOf, linkAddress, withoutAddressRequest } from "../../../src/ui/kit/addressRequest.ts";

const PAGE = "https://house.example/tool/";

describe("the address of the page", () => {
  test.each([
    { name: "a plain address", href: PAGE, wish: { type: "last" } },
    {
      name: "an example",
      href: `${PAGE}?example=house-stacked`,
      wish: { type: "example", key: "house-stacked" },
    },
    { name: "a link", href: `${PAGE}#d1.AbC-_9`, wish: { type: "link", fragment: "d1.AbC-_9" } },
    {
      name: "a link beside an example",
      href: `${PAGE}?example=x#d1.Ab`,
      wish: { type: "link", fragment: "d1.Ab" },
    },
    { name: "a link of a later version", href: `${PAGE}#d9.Ab`, wish: { type: "link", fragment: "d9.Ab" } },
    { name: "a link cut off after its mark", href: `${PAGE}#d1`, wish: { type: "link", fragment: "d1" } },
    {
      name: "a practice case",
      href: `${PAGE}#t1.lounge-dark`,
      wish: { type: "training", fragment: "t1.lounge-dark" },
    },
    {
      name: "a seed with its design, beside an example",
      href: `${PAGE}?example=x#t1.8&d1.AbC`,
      wish: { type: "training", fragment: "t1.8&d1.AbC" },
    },
    {
      name: "a link in angle brackets, behind two hashes",
      href: `${PAGE}##%3Cd1.AbC%3E`,
      wish: { type: "link", fragment: "#%3Cd1.AbC%3E" },
    },
    { name: "a link in capitals", href: `${PAGE}#D1.ABC`, wish: { type: "link", fragment: "D1.ABC" } },
    {
      name: "a link behind a space and a whole address",
      href: `${PAGE}# ${PAGE}#d1.Ab`,
      wish: { type: "link", fragment: `%20${PAGE}#d1.Ab` },
    },
    { name: "a heading that ends like a mark", href: `${PAGE}#chapter-d1.`, wish: { type: "last" } },
    { name: "a heading of some page", href: `${PAGE}#details`, wish: { type: "last" } },
    { name: "an empty example", href: `${PAGE}?example=`, wish: { type: "last" } },
    { name: "no address at all", href: "about nothing", wish: { type: "last" } },
  ])("asks for $wish.type: $name", ({ href, wish }) => {
    expect(addressRequestOf(href)).toEqual(wish);
  });

  test("without its wish keeps other parameters", () => {
    expect(withoutAddressRequest(`${PAGE}?example=a&lang=en#d1.Ab`)).toBe(`${PAGE}?lang=en`);
  });

  test("with a design in it is read back as the same link", () => {
    const address = linkAddress(`${PAGE}?example=a#d1.old`, "d1.New_-0");
    expect(addressRequestOf(address)).toEqual({ type: "link", fragment: "d1.New_-0" });
    expect(new URL(address).search).toBe("");
  });
});
