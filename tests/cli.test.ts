/** The command line: what it prints and how it exits. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { run } from "../src/cli.ts";
import { writeDesign } from "../src/design/file.ts";
import { aerialLadder } from "./structures.ts";

const folder = mkdtempSync(join(tmpdir(), "downlead-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const example = (key: string) => `src/design/examples/${key}.json`;

describe("check", () => {
  test("exits with 0 for a design without errors and says that its receivers work", () => {
    const { exitCode, stdout, stderr } = run([example("house-universal")]);
    expect(exitCode).toBe(0);
    expect(stderr).toBe("");
    expect(stdout).toMatch(
      /^works: Satellite receiver living room: Gets all 80 satellite transponders, with 7\.8 dB to spare/m,
    );
    expect(stdout).not.toMatch(/FAILS|⟦/);
  });

  test("exits with 1 for a design with errors, findings first, worst first", () => {
    const { exitCode, stdout } = run([example("house-wideband-fails")]);
    expect(exitCode).toBe(1);
    const kinds = stdout
      .trim()
      .split("\n")
      .map((line) => line.split(":")[0]);
    const order = ["error", "warning", "note", "works", "FAILS"];
    const ranks = kinds.map((k) => Math.min(order.indexOf(k ?? ""), 3));
    expect(ranks).not.toContain(-1);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(stdout).toMatch(/^FAILS: TV living room: /m);
  });

  test("--json gives one object with findings, receivers and wires", () => {
    const { stdout } = run([example("house-wideband-fails"), "--json"]);
    const result = JSON.parse(stdout);
    expect(Object.keys(result)).toEqual(["findings", "receivers", "wires"]);
    const finding = result.findings.find((f: { rule: string }) => f.rule === "band-cut");
    expect(finding).toMatchObject({
      severity: "error",
      parts: expect.arrayContaining([expect.any(String)]),
      wires: expect.any(Array),
      message: expect.stringMatching(/passes only/),
      value: expect.any(Number),
      limit: 0,
      unit: expect.any(String),
    });
    const receiver = result.receivers.find((r: { id: string }) => r.id === "sat1");
    expect(receiver).toMatchObject({ label: "Wideband receiver living room", works: false });
    expect(receiver.services[0]).toMatchObject({
      name: "Satellite",
      carriersWanted: 80,
      carriersGot: 23,
      levelMin: expect.any(Number),
      levelMax: expect.any(Number),
      cnMin: expect.any(Number),
    });
    const wire = result.wires.find((w: { from: string[] }) => w.from.join(".") === "lnb.v");
    expect(wire.bands).toEqual([
      expect.objectContaining({ service: "Satellite", origin: "dish/V", levelMin: expect.any(Number) }),
    ]);
    // IF = RF − LO with 10 400 MHz: the lowest carrier at 10 729 MHz comes to 329 MHz.
    expect(wire.bands[0].fromMHz).toBeGreaterThan(300);
    expect(wire.bands[0].fromMHz).toBeLessThan(329);
  });

  test("exits with 2 and a sentence for a design beyond the budget, or that takes too long", () => {
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
