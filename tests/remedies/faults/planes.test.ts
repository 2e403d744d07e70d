/** Planes and tuners as symptoms. A multiswitch without one trunk lacks one quadrant for all behind it: EN 50494 and common practice. */
import { describe, expect, test } from "vitest";
import { diagnose } from "../../../src/remedies/faults/diagnose.ts";
import { faultOf } from "../../../src/remedies/faults/list.ts";
import { planeTests } from "../../../src/remedies/faults/planeTests.ts";
import {
  detailedSymptoms,
  evaluated,
  type Observation,
  symptomsOf,
} from "../../../src/remedies/faults/symptoms.ts";
import { designOf } from "../../../src/remedies/training/case.ts";
import { finish } from "./finish.ts";

const block = designOf("block-multiswitch");
const sound = evaluated(block);

function under(id: string) {
  const fault = faultOf(block, id);
  if (!fault) throw new Error(`no fault ${id}`);
  return evaluated(fault.apply(block), sound);
}

const trunk = block.wires.find((w) => w.to[0] === "ms" && w.to[1] === "hl");
if (!trunk) throw new Error("no trunk");
const trunkOff = `plug-off:${trunk.from.join(".")}>${trunk.to.join(".")}`;

describe("planes as symptoms", () => {
  test("one transponder stands for each quadrant, in its own half and polarisation", () => {
    const tests = planeTests(sound.evaluation);
    expect(tests.map(({ plane }) => `${plane.polarisation}${plane.half}`)).toEqual([
      "Vlow",
      "Vhigh",
      "Hlow",
      "Hhigh",
    ]);
    // The halves meet at 11.7 GHz (universal LNB, EN 61319-1).
    for (const { plane, carrier } of tests) expect(carrier.airMHz < 11_700).toBe(plane.half === "low");
  });

  test("a trunk that is off takes that one plane from every receiver", () => {
    const planes = detailedSymptoms(under(trunkOff), sound).filter((s) => s.plane && s.role === "receiver");
    expect(planes.length).toBeGreaterThan(4);
    for (const { plane, state } of planes) expect(state).toBe(plane?.endsWith("/HL") ? "fails" : "works");
  });

  test("whoever looks at services only sees what he saw before", () => {
    const plain = symptomsOf(sound, sound);
    expect(plain.every((s) => s.plane === undefined && s.tuner === undefined && s.state === "works")).toBe(
      true,
    );
  });

  test("one plane failing at every flat, and the others working, leads to its trunk", () => {
    const seen: readonly Observation[] = detailedSymptoms(under(trunkOff), sound)
      .filter((s) => s.plane !== undefined && s.role === "receiver")
      .map(({ part, service, plane, state }) => ({
        part,
        service,
        ...(plane === undefined ? {} : { plane }),
        works: state === "works",
      }));
    const [best] = finish(diagnose(block, seen));
    expect(best?.match).toBe("exact");
    expect(best?.faults.map((f) => f.id)).toContain(trunkOff);
    expect(best?.faults.map((f) => f.id)).not.toContain("dish-off:dish");
  }, 120_000);
});

describe("tuners as symptoms", () => {
  const house = designOf("single-cable-house");
  const works = evaluated(house);

  test("are told apart where a receiver has several, and all work in the sound design", () => {
    const tuners = detailedSymptoms(works, works).filter((s) => s.tuner !== undefined);
    expect(tuners.length).toBeGreaterThan(1);
    expect(tuners.every((s) => s.state === "works")).toBe(true);
    for (const { part, tuner } of tuners)
      expect(tuners.some((other) => other.part === part && other.tuner !== tuner)).toBe(true);
  });

  test("one with a wrong centre frequency fails alone", () => {
    const several = detailedSymptoms(works, works).find((s) => s.tuner === 2);
    const fault = faultOf(house, `wrong-user-band:${several?.part}=centre`);
    if (!several || !fault) throw new Error("no receiver with two tuners");
    const now = detailedSymptoms(evaluated(fault.apply(house), works), works).filter(
      (s) => s.part === several.part && s.tuner !== undefined,
    );
    // The fault moves the first user band of the receiver, which its first tuner uses.
    expect(now.map((s) => s.state === "works")).toEqual(now.map((s) => s.tuner !== 1));
  });
});
