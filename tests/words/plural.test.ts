import { describe, expect, it } from "vitest";
import { plural } from "../../src/words/plural.ts";

const WIRES = {
  one: (n: string) => `${n} wire is open.`,
  other: (n: string) => `${n} wires are open.`,
};

// English has two forms (CLDR plural rules: one for 1, other for all else, 0 and fractions included).
describe("plural", () => {
  it("takes the singular for 1 alone", () => {
    expect(plural(1, WIRES)).toBe("1 wire is open.");
    expect(plural(2, WIRES)).toBe("2 wires are open.");
    expect(plural(11, WIRES)).toBe("11 wires are open.");
    expect(plural(21, WIRES)).toBe("21 wires are open.");
    expect(plural(101, WIRES)).toBe("101 wires are open.");
    expect(plural(1.5, WIRES)).toBe("1.5 wires are open.");
  });

  it("says nothing of its own for none, unless a form is given", () => {
    expect(plural(0, WIRES)).toBe("0 wires are open.");
    expect(plural(0, { ...WIRES, zero: "No wire is open." })).toBe("No wire is open.");
  });

  it("goes by the number as it is printed", () => {
    expect(plural(1.02, WIRES)).toBe("1 wire is open.");
    expect(plural(0.98, WIRES)).toBe("1 wire is open.");
    expect(plural(1.06, WIRES)).toBe("1.1 wires are open.");
    expect(plural(0.04, { ...WIRES, zero: "No wire is open." })).toBe("No wire is open.");
  });

  it("takes texts without a number", () => {
    expect(plural(1, { one: "It is open.", other: "They are open." })).toBe("It is open.");
    expect(plural(3, { one: "It is open.", other: "They are open." })).toBe("They are open.");
  });
});
