/** The command line: what it prints and how it exits. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { run } from "../src/cli.ts";
import type { Design } from "../src/design/design.ts";
import { EXAMPLES } from "../src/design/examples.ts";
import { writeDesign } from "../src/design/file.ts";
import { SETTINGS } from "../src/design/settings.ts";
import { anyDesign } from "./arbitraries.ts";
import { draw } from "./draw.ts";
import { variedExample } from "./findings/varied.ts";
import { aerialLadder } from "./structures.ts";

const folder = mkdtempSync(join(tmpdir(), "downlead-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const example = (key: string) => `src/design/examples/${key}.json`;

/** One LNB, off the line of a receiver by an outlet that takes no satellite signal. */
const WRONG_PLATE = file(
  "plate.json",
  writeDesign(
    draw(
      { z: ["receiver-sat"], plate: ["outlet-tv"], lnb: ["lnb-universal"], dish: ["dish"] },
      "dish.sky > lnb.sky, lnb.out > plate.in, plate.tv > z.sat",
    ),
  ),
);

/** A wrong plate; a television that gets too little; a radio that is still to be connected. */
const THREE_LINES = file(
  "three.json",
  writeDesign(
    draw(
      {
        z: ["receiver-sat"],
        plate: ["outlet-tv"],
        lnb: ["lnb-universal"],
        dish: ["dish"],
        weak: ["aerial-uhf", { levelDbuv: 44 }],
        socket: ["outlet-tv"],
        tv: ["receiver-tv"],
        radio: ["receiver-fm"],
      },
      "dish.sky > lnb.sky, lnb.out > plate.in, plate.tv > z.sat, weak.out > socket.in, socket.tv > tv.in",
    ),
  ),
);

type Json = {
  file: string;
  causes: {
    id: string;
    severity: string;
    rule: string;
    parts: string[];
    findings: number[];
    receivers: string[];
  }[];
  findings: { id: string; severity: string; rule: string; message: string }[];
  receivers: {
    id: string;
    works: boolean;
    state: string;
    tuners: { wanted: number; got: number; why: string | null }[];
  }[];
  outlets: { id: string }[];
  wires: { from: string[]; to: string[]; volts?: number; milliamps?: number; bands: { fromMHz: number }[] }[];
  cures?: {
    title: string;
    steps: string[];
    parts: string[];
    cures: string[];
    leaves: string[];
    minutes: number;
    newCables: number;
  }[];
};

const parsed = (args: readonly string[]): readonly Json[] =>
  run([...args, "--json"])
    .stdout.split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line));

describe("check", () => {
  test("exits with 0 for a design without errors and says that its receivers work", () => {
    const { exitCode, stdout, stderr } = run([example("house-universal")]);
    expect(exitCode).toBe(0);
    expect(stderr).toBe("");
    expect(stdout).toMatch(/^All \d+ receivers work\./);
    expect(stdout).toMatch(
      /^ *“Satellite receiver living room”: works\. Gets all 80 satellite transponders/m,
    );
    expect(stdout).not.toMatch(/fails|error:|⟦/);
  });

  test("exits with 1 for a design with errors: causes first, what follows from each, then place by place", () => {
    const { exitCode, stdout } = run([THREE_LINES]);
    expect(exitCode).toBe(1);
    const lines = stdout.trim().split("\n");
    const causes = lines.filter((line) => /^(error|warning|note): /.test(line));
    const rank = (line: string) => ["error", "warning", "note"].indexOf(line.split(":")[0] ?? "");
    expect(new Set(causes.map(rank))).toEqual(new Set([0, 1, 2]));
    expect(causes.map(rank)).toEqual(causes.map(rank).sort((a, b) => a - b));
    // Nothing that is found is left out: as many lines as the heading counts.
    const found = lines.filter((line) => /^( {4})?(error|warning|note): /.test(line));
    expect(lines[1]).toBe(`${causes.length} causes, ${found.length} findings.`);
    // One fault, one line at the head, however many suffer.
    expect(run([example("house-wideband-fails")]).stdout).toMatch(
      /^3 of 7 receivers work\.\n1 cause, \d+ findings\.\nerror: /,
    );
  });

  test("place by place: each outlet, its sockets, and the receivers behind them, with level and C/N", () => {
    const { stdout } = run([THREE_LINES]);
    // The receiver of the wrong outlet has its lead in the socket for TV, and so has the television in the other one.
    expect(stdout).toMatch(/^Outlet “plate”: .*\n {2}Socket TV\n(?: {4}[A-Z].*\n)* {4}“z”: fails\. /m);
    expect(stdout).toMatch(
      /^Outlet “socket”: .*\n {2}Socket TV\n {4}Terrestrial TV: \d of \d.*\n {4}“tv”: /m,
    );
    // A loss of 1 dB in the outlet: 44 dBµV at the aerial are 43 at the socket and in the receiver.
    expect(stdout).toMatch(/^ {4}“tv”: .*\n {6}Terrestrial TV: 6 of 6, 43 dBµV, C\/N \d+(\.\d)? dB$/m);
    // What is behind no outlet comes last.
    expect(stdout.trim().split("\n").at(-1)).toMatch(/^“radio”: fails\. Is not connected yet\.$/);
  });

  test("outlets of one flat stand together under its name", () => {
    const flats = draw(
      {
        uhf: ["aerial-uhf"],
        split: ["splitter", { ways: 3 }],
        hall: ["outlet-tv", { dwelling: "2 left" }],
        loft: ["outlet-tv"],
        kitchen: ["outlet-tv", { dwelling: "2 left" }],
      },
      "uhf.out > split.in, split.out1 > hall.in, split.out2 > loft.in, split.out3 > kitchen.in",
    );
    const { stdout } = run([file("flats.json", writeDesign(flats))]);
    const heads = stdout.split("\n").filter((line) => /Flat|Outlet/.test(line));
    expect(heads.map((line) => line.replace(/:.*/, ""))).toEqual([
      "Flat “2 left”",
      "  Outlet “hall”",
      "  Outlet “kitchen”",
      "Outlet “loft”",
    ]);
  });

  test("the first line of a wrong plate names the plate, and the receiver behind it suffers", () => {
    const [result] = parsed([WRONG_PLATE]);
    expect(result?.causes[0]).toMatchObject({ severity: "error", receivers: ["z"] });
    expect(result?.causes[0]?.parts[0]).toBe("plate");
    expect(run([WRONG_PLATE]).stdout.split("\n")[2]).toMatch(/^error: .*“plate”/);
  });

  test("--json gives one object for a file, with causes, findings, receivers, outlets and wires", () => {
    const [result] = parsed([example("house-wideband-fails")]);
    if (!result) throw new Error("nothing printed");
    expect(Object.keys(result)).toEqual(["file", "causes", "findings", "receivers", "outlets", "wires"]);
    expect(result.file).toBe(example("house-wideband-fails"));
    const finding = result.findings.find((f) => f.rule === "band-cut");
    expect(finding).toMatchObject({
      severity: "error",
      parts: expect.arrayContaining([expect.any(String)]),
      wires: expect.any(Array),
      message: expect.stringMatching(/passes only/),
      value: expect.any(Number),
      limit: 0,
      unit: expect.any(String),
    });
    expect(result.receivers.find((r) => r.id === "sat1")).toMatchObject({
      label: "Wideband receiver living room",
      works: false,
      state: "fails",
      services: [
        {
          name: "Satellite",
          carriersWanted: 80,
          carriersGot: 23,
          levelMin: expect.any(Number),
          levelMax: expect.any(Number),
          cnMin: expect.any(Number),
        },
      ],
    });
    const wire = result.wires.find((w) => w.from.join(".") === "lnb.v");
    expect(wire?.bands).toEqual([
      expect.objectContaining({ service: "Satellite", origin: "dish/V", levelMin: expect.any(Number) }),
    ]);
    // IF = RF − LO with 10 400 MHz: the lowest carrier at 10 729 MHz comes to 329 MHz.
    const fromMHz = wire?.bands[0]?.fromMHz;
    expect(fromMHz).toBeGreaterThan(300);
    expect(fromMHz).toBeLessThan(329);
  });

  test("every finding belongs to one cause, and a receiver that fails to at least one", () => {
    for (const { key } of EXAMPLES) {
      const [result] = parsed([example(key)]);
      const indices = result?.causes.flatMap((cause) => cause.findings) ?? [];
      expect([...indices].sort((a, b) => a - b)).toEqual(result?.findings.map((_, n) => n));
      const suffering = new Set(result?.causes.flatMap((cause) => cause.receivers));
      for (const { id, works } of result?.receivers ?? []) expect(works || suffering.has(id)).toBe(true);
    }
  });

  test("says how many volts come up a wire, and what is drawn", () => {
    const path = file(
      "volts.json",
      writeDesign(
        draw(
          { z: ["receiver-sat", { polarisation: "H" }], lnb: ["lnb-universal"], dish: ["dish"] },
          "dish.sky > lnb.sky, lnb.out > z.sat",
        ),
      ),
    );
    const [result] = parsed([path]);
    const [sky, line] = result?.wires ?? [];
    expect(sky).not.toHaveProperty("volts");
    // A receiver gives 18 V for horizontal (EN 61319-1), and no cable lies between to lose any of them.
    expect(line?.volts).toBeCloseTo(18, 0);
    expect(line?.milliamps).toBeGreaterThan(0);
  });

  test("several files: a line each, and the gravest code of all", () => {
    const good = example("house-universal");
    const bad = example("house-wideband-fails");
    const gone = join(folder, "gone.json");
    expect(parsed([good, bad]).map((r) => r.file)).toEqual([good, bad]);
    expect(run([good, good]).exitCode).toBe(0);
    expect(run([good, bad]).exitCode).toBe(1);
    const mixed = run([bad, gone, good, "--json"]);
    expect(mixed.exitCode).toBe(2);
    expect(mixed.stdout.trim().split("\n")).toHaveLength(2);
    expect(mixed.stderr).toMatch(/gone\.json: cannot be read/);
    expect(run([good, bad]).stdout).toMatch(new RegExp(`^${good}\n[^]*\n\n${bad}\n`));
  });

  test("--cures adds what was proved: what it cures, what it leaves, and what it takes", () => {
    const [result] = parsed([WRONG_PLATE, "--cures"]);
    const [first] = result?.cures ?? [];
    expect(first).toMatchObject({
      title: expect.stringMatching(/./),
      parts: expect.arrayContaining(["plate"]),
      leaves: [],
      newCables: 0,
      cost: expect.any(Number),
    });
    expect(first?.cures).toContain(result?.causes[0]?.id);
    expect(first?.steps.length).toBeGreaterThan(0);
    expect(first?.minutes).toBeGreaterThan(0);
    expect(run([WRONG_PLATE, "--cures"]).stdout).toMatch(/^Cure 1: .* min, no new cable\)$/m);
    const sound = run([example("block-multiswitch"), "--cures"]);
    expect(sound).toMatchObject({
      exitCode: 0,
      stdout: expect.stringMatching(/there is nothing to cure\.\n$/),
    });
  });

  test("ends with 2 and a sentence for a design beyond the budget, or that takes too long", () => {
    const path = file("ladder.json", writeDesign(aerialLadder(40)));
    const spent = run([path], { budget: { work: 500 } });
    expect(spent).toMatchObject({ exitCode: 2, stdout: "" });
    const says = /^\S+ladder\.json: too large to evaluate: [^;]+; stopped after (\d+) parts of 82\.\n$/;
    // By a count, so at the same part every time.
    expect(spent.stderr).toMatch(says);
    expect(run([path], { budget: { work: 500 } }).stderr).toBe(spent.stderr);
    const late = run([path], { seconds: 0 });
    expect(late).toMatchObject({ exitCode: 2, stdout: "" });
    expect(late.stderr).toMatch(/longer than 0 seconds; stopped after 0 parts of 82\.$/m);
  });

  test.each([
    { name: "no file named", args: [], says: /Usage/ },
    { name: "an unknown option", args: ["--colour", "x.json"], says: /Unknown option --colour/ },
    {
      name: "a file that is not there",
      args: [join(folder, "nowhere.json")],
      says: /nowhere\.json: cannot be read/,
    },
    { name: "text that is no JSON", args: [file("a.json", "{ broken")], says: /a\.json: .*line 1/ },
    {
      name: "an unknown kind",
      args: [
        file(
          "b.json",
          '{"format":"downlead","version":1,"title":"t","parts":[{"id":"x","kind":"warp"}],"wires":[]}',
        ),
      ],
      says: /b\.json: “x”: this edition does not know the kind of part “warp”\./,
    },
    {
      name: "a version from the future",
      args: [file("c.json", '{"format":"downlead","version":9}')],
      says: /The file was written by a newer edition, as version 9/,
    },
  ])("exits with 2 for $name, and says where and why", ({ args, says }) => {
    const { exitCode, stdout, stderr } = run(args);
    expect(exitCode).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toMatch(says);
  });
});

describe("the exit code and the words", () => {
  const expectAgreement = (design: Design) => {
    const path = file("any.json", writeDesign(design));
    const plain = run([path]);
    // With other options a part may lack a port that is connected: no file that could be written by the program.
    fc.pre(plain.exitCode !== 2);
    const [result] = parsed([path]);
    if (!result) throw new Error(plain.stderr);
    const isWrong =
      result.findings.some((f) => f.severity === "error") || result.receivers.some((r) => !r.works);
    expect(plain.exitCode).toBe(isWrong ? 1 : 0);
    expect(/^ *(error: |“.*”: fails\. )/m.test(plain.stdout)).toBe(isWrong);
    // Whoever fails is told why.
    const suffering = new Set(result.causes.flatMap((cause) => cause.receivers));
    expect(result.receivers.filter((r) => !r.works && !suffering.has(r.id))).toEqual([]);
  };

  test.each(EXAMPLES.map((e) => [e.key, e.load()] as const))("agree for %s", (_, design) =>
    expectAgreement(design),
  );

  test("agree for installations with faults", () => {
    fc.assert(fc.property(variedExample(), expectAgreement), { numRuns: 40 });
  });

  test("agree for any design", () => {
    fc.assert(fc.property(anyDesign(), expectAgreement), { numRuns: 40 });
  });
});

describe("with --conditions", () => {
  /** Two receivers on one switched output: each gets only what the other's request leaves (trade fact, no source). */
  const SHARED = file(
    "shared.json",
    writeDesign(
      draw(
        {
          y: ["receiver-sat", { polarisation: "V" }],
          z: ["receiver-sat", { polarisation: "H" }],
          s: ["splitter"],
          l: ["lnb-universal"],
          d: ["dish"],
        },
        "d.sky > l.sky, l.out > s.in, s.out1 > y.sat, s.out2 > z.sat",
      ),
    ),
  );

  /** A dish that rain of an hour a year and more silences; it works under a clear sky. */
  const RAIN = file(
    "rain.json",
    writeDesign({
      ...draw(
        { z: ["receiver-sat"], l: ["lnb-universal"], d: ["dish", { rainRateMmPerH: 90 }] },
        "d.sky > l.sky, l.out > z.sat",
      ),
      settings: SETTINGS.parse({ rainPercent: 0.01 }),
    }),
  );

  test("says how each place stands under each condition, and which is the worst", () => {
    const { stdout } = run([SHARED, "--conditions"]);
    expect(stdout).toContain("Alone, 2 that fail as drawn work.");
    expect(stdout).toMatch(/“y”\n {2}As drawn: fails \(the worst\)\n/);
    expect(stdout).toMatch(/On alone: works/);
    expect(run([SHARED]).stdout).not.toContain("Conditions:");
  });

  test("gives the same as an object with --json", () => {
    const [line] = run([SHARED, "--conditions", "--json"]).stdout.split("\n");
    const { conditions } = JSON.parse(line ?? "");
    expect(conditions.conditions).toEqual(["As drawn", "In rain", "On alone"]);
    const y = conditions.places.find(({ id }: { id: string }) => id === "y");
    expect(y).toMatchObject({ worst: "As drawn", role: "receiver" });
    expect(y.under).toContainEqual(expect.objectContaining({ condition: "On alone", state: "works" }));
  });

  test("counts a receiver that fails in rain as one that fails", () => {
    expect(run([RAIN]).exitCode).toBe(0);
    const { exitCode, stdout } = run([RAIN, "--conditions"]);
    expect(stdout).toMatch(/Conditions: Works( on a knife’s edge)? as drawn; fails in rain\./);
    expect(exitCode).toBe(1);
  });
});
