import { describe, expect, test } from "vitest";
import { EXAMPLES, exampleOf } from "../../src/design/examples.ts";
import { decodeLink, encodeLink } from "../../src/design/link.ts";
import { reaches } from "../../src/design/lookup.ts";

describe.each(EXAMPLES.map((example) => ({ name: example.key, example })))(
  "The example $name",
  ({ example }) => {
    const design = example.load();

    test("opens, with a title and a lesson of one line", () => {
      expect(design).toMatchObject({ title: example.title, lesson: example.lesson });
      expect(example.lesson).toMatch(/^[^\n]{20,200}$/);
    });

    test("has no loop and no part without any wire", () => {
      for (const { from, to } of design.wires) expect(reaches(design.wires, to[0], from[0])).toBe(false);
      const wired = new Set(design.wires.flatMap(({ from, to }) => [from[0], to[0]]));
      expect(design.parts.filter((part) => !wired.has(part.id)).map((part) => part.id)).toEqual([]);
    });

    test("fits into a link below 2,000 characters, and comes back from it whole", async () => {
      const link = await encodeLink(design);
      expect(link.length).toBeLessThan(2_000);
      expect(await decodeLink(link)).toEqual({ ok: true, design, notes: [] });
    });

    test("is found by its name in an address", () => {
      expect(exampleOf(example.key)?.title).toBe(example.title);
    });
  },
);

test("a name that no example has finds nothing", () => {
  expect(exampleOf("__proto__")).toBeUndefined();
});
