/**
 * What every kind and every option has to declare, so that cures, faults, costs and causes know it without a table of
 * their own. Each check collects what was forgotten by name. The declarations are held against what the kinds do:
 * paths, supply, requests and receptions of the same declarations are the source beside each check.
 */
import { describe, expect, test } from "vitest";
import { CATALOGUE, defaultOptions, kindOf } from "../../src/parts/catalogue.ts";
import type { AnyOptions, PartKind, PortRole } from "../../src/parts/contract.ts";
import type { FieldMeta } from "../../src/parts/fields.ts";
import {
  defectsOf,
  describedOptions,
  metresOf,
  onSiteOf,
  optionMeaning,
  optionsMeaning,
  standardValues,
} from "../../src/parts/meanings.ts";
import type { Meaning } from "../../src/parts/optionTrade.ts";
import { gainDbAt } from "../../src/signal/gain.ts";

type Option = {
  readonly kind: PartKind;
  readonly key: string;
  readonly meta: FieldMeta;
  readonly name: string;
};

const OPTIONS: readonly Option[] = CATALOGUE.flatMap((kind) =>
  [...describedOptions(kind)].map(([key, meta]) => ({ kind, key, meta, name: `${kind.kind}.${key}` })),
);

const names = (list: readonly { readonly name: string }[]) => list.map(({ name }) => name);
const kinds = (list: readonly PartKind[]) => list.map(({ kind }) => kind);
const typical = (kind: PartKind, changed: AnyOptions = {}) =>
  kind.options.parse({ ...defaultOptions(kind), ...changed }) as AnyOptions;

/** Every value of a choice or a switch. */
const valuesOf = ({ control, choices = [] }: FieldMeta): readonly unknown[] =>
  control === "switch" ? [false, true] : choices.map(({ value }) => value);

describe("a kind", () => {
  test("has minutes of work wherever it has a price", () => {
    const forgotten = CATALOGUE.filter(({ trade }) => trade.price > 0 !== trade.workMinutes > 0);
    expect(kinds(forgotten)).toEqual([]);
    // A meter is brought along; a phone mast and a cable network are somebody else's: nothing else comes for nothing.
    const free = CATALOGUE.filter(({ trade }) => trade.workMinutes === 0);
    expect(kinds(free)).toEqual(["cable-entry", "pick-up", "meter"]);
  });

  test("says what stands in its line once it is taken out, where a wire can be led through it", () => {
    const inline = CATALOGUE.filter(({ inline }) => inline);
    expect(kinds(inline.filter(({ trade }) => !trade.inItsPlace))).toEqual([]);
    expect(inline.length).toBeGreaterThan(10);
  });

  test("says with how many volts a unit in the line feeds it, if it draws current: enough for it to work", () => {
    const fed = CATALOGUE.flatMap((kind) => {
      const option = optionsWith(kind).find((o) => kind.power(o).load !== undefined);
      const minVolts = option && kind.power(option).load?.minVolts;
      return minVolts === undefined ? [] : [{ kind, minVolts }];
    });
    expect(kinds(fed.map(({ kind }) => kind))).toContain("amp-masthead");
    expect(
      fed
        .filter(({ kind, minVolts }) => !((kind.trade.fedWithVolts ?? 0) > minVolts))
        .map((f) => f.kind.kind),
    ).toEqual([]);
  });

  test("says which feed it gives, if its outputs are switched or stacked or planes of a satellite", () => {
    for (const kind of CATALOGUE) {
      const options = defaultOptions(kind);
      const by = new Set((kind.power(options).switches ?? []).map((s) => s.by));
      const planes = kind.ports(options).some((p) => p.side === "out" && p.role === "plane");
      const { gives, job } = kind.trade;
      if (by.has("stack")) expect(gives, kind.kind).toBe("stacked");
      else if (by.has("quadrant") || by.has("polarisation") || by.has("both"))
        expect(gives, kind.kind).toBe("switched");
      else if (by.has("position")) expect(job, kind.kind).toBe("position switch");
      else if (planes) expect(["planes", "wideband"], kind.kind).toContain(gives);
      else expect(gives, kind.kind).toBeUndefined();
    }
  });

  test("takes the feed that its own reception is made for", () => {
    for (const kind of CATALOGUE) {
      const inputs = kind.reception?.(defaultOptions(kind)).inputs ?? [];
      const satellite = inputs.find((input) => input.services.includes("satellite"));
      expect(kind.trade.takes, kind.kind).toBe(satellite?.feed);
    }
  });

  test("is sold by the metre just where it has a length", () => {
    for (const kind of CATALOGUE) {
      const length = optionMeaning(kind, "length");
      expect(kind.trade.soldBy === "metre", kind.kind).toBe(length !== undefined);
      if (length) expect(metresOf(kind, typical(kind, { [length]: 7 }))).toBe(7);
    }
  });

  test("is mistaken only for kinds that exist, with options that they have", () => {
    const wrong = CATALOGUE.flatMap(({ kind, trade }) =>
      (trade.mistakenFor ?? []).flatMap((other) => {
        const found = kindOf(other.kind);
        const isKnown = found && found.kind !== kind && accepts(found, other.options ?? {});
        return isKnown ? [] : [`${kind} for ${other.kind}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  test("exists in wider types only with options that it has", () => {
    const wrong = CATALOGUE.flatMap((kind) =>
      (kind.trade.widerTypes ?? [])
        .filter(({ options }) => !accepts(kind, options))
        .map(({ name }) => `${kind.kind}: ${name}`),
    );
    expect(wrong).toEqual([]);
  });

  test("has a gain to be named, where it lifts and adds noise of its own", () => {
    const lifting = CATALOGUE.filter(
      (kind) =>
        kind.family === "lift" &&
        kind.signal(defaultOptions(kind), { id: "x", powered: true }).paths?.some((p) => p.noiseFigureDb),
    );
    expect(kinds(lifting)).toEqual([
      "amp-masthead",
      "amp-distribution",
      "amp-if",
      "amp-masthead-inputs",
      "amp-launch",
      "amp-channel",
      "amp-trunks",
    ]);
    expect(
      kinds(lifting.filter((kind) => optionsMeaning(kind, "gain", "output level").length === 0)),
    ).toEqual([]);
  });

  test("is a defect just where it is a joint that went wrong", () => {
    expect(kinds(CATALOGUE.filter(({ trade }) => trade.defect))).toEqual(["bad-joint"]);
  });
});

/** Options of a kind with every value of every choice and switch, one at a time. */
function optionsWith(kind: PartKind): readonly AnyOptions[] {
  const single = [...describedOptions(kind)].flatMap(([key, meta]) =>
    valuesOf(meta).map((value) => typical(kind, { [key]: value })),
  );
  return [defaultOptions(kind), ...single];
}

function accepts(kind: PartKind, options: AnyOptions): boolean {
  const hasAll = Object.keys(options).every((key) => describedOptions(kind).has(key));
  return hasAll && kind.options.safeParse({ ...defaultOptions(kind), ...options }).success;
}

describe("a port", () => {
  const INPUTS: readonly PortRole[] = ["beam", "plane", "band", "terrestrial", "input", "position"];
  const OUTPUTS: readonly PortRole[] = ["beam", "plane", "band", "output", "leg", "tap", "trunk", "socket"];
  const each = CATALOGUE.flatMap((kind) => optionsWith(kind).map((options) => ({ kind, options })));

  test("has a role of its side", () => {
    const wrong = each.flatMap(({ kind, options }) =>
      kind
        .ports(options)
        .filter((p) => !(p.side === "in" ? INPUTS : OUTPUTS).includes(p.role))
        .map((p) => `${kind.kind}.${p.id}`),
    );
    expect([...new Set(wrong)]).toEqual([]);
  });

  test("is a beam just where the medium is the sky", () => {
    for (const { kind, options } of each)
      for (const port of kind.ports(options))
        expect(port.role === "beam", `${kind.kind}.${port.id}`).toBe(port.medium === "sky");
  });

  test("is a plane just where it says which, and that is what its path takes or is switched to", () => {
    for (const { kind, options } of each) {
      const { paths = [] } = kind.signal(options, { id: "x", powered: true });
      for (const { id, role, side, plane } of kind.ports(options)) {
        const name = `${kind.kind}.${id}`;
        if (role === "plane") expect(plane, name).toBeDefined();
        else if (role !== "trunk") expect(plane, name).toBeUndefined();
        if (!plane) continue;
        const { position, polarisation, half } = plane;
        const taken = paths.filter((p) => side === "out" && role === "plane" && p.to === id);
        expect(
          taken.filter((p) => p.takes?.polarisation !== polarisation || p.takes.half !== half),
          name,
        ).toEqual([]);
        const settings = paths.flatMap((p) => (p.from === id && p.condition ? [p.condition.setting] : []));
        // Out of a whole polarisation a switch makes either half.
        const halves = half ? [half === "low" ? "L" : "H"] : ["L", "H"];
        const quadrants = halves.map((h) => `${polarisation}${h}`);
        expect(
          settings.filter((s) => !quadrants.some((q) => s === q || s === `${position}:${q}`)),
          name,
        ).toEqual([]);
      }
    }
    const planesOf = (key: string, options: AnyOptions) =>
      kindOf(key)
        ?.ports(options)
        .filter((p) => p.role === "plane").length;
    // Four of each of four satellites; two whole polarisations.
    const multiswitch = kindOf("multiswitch");
    expect(multiswitch && planesOf("multiswitch", typical(multiswitch, { satelliteInputs: "16" }))).toBe(16);
    expect(planesOf("lnb-wideband", {})).toBe(2);
  });

  test("is a socket just where a wall plate delivers", () => {
    for (const { kind, options } of each) {
      const delivered = kind.delivery?.(options).sockets.map((s) => s.port) ?? [];
      const sockets = kind.ports(options).filter((p) => p.role === "socket");
      expect(sockets.map((p) => p.id).sort(), kind.kind).toEqual([...delivered].sort());
    }
  });

  /** What comes to an output, whatever its name. */
  const arriving = (kind: PartKind, options: AnyOptions, port: string) => {
    const { paths = [], stacks = [] } = kind.signal(options, { id: "x", powered: true });
    const ways = paths
      .filter((p) => p.to === port)
      .map((p) => ({ ...p, to: "", condition: p.condition?.setting }));
    return JSON.stringify([ways, stacks.filter((s) => s.to === port).map((s) => ({ ...s, to: "" }))]);
  };
  const outputs = (kind: PartKind, options: AnyOptions, roles: readonly PortRole[]) =>
    kind.ports(options).filter((p) => p.side === "out" && roles.includes(p.role));

  test("gives the same as its sisters that are switched the same way, as an output, leg or tap", () => {
    const seen = each.flatMap(({ kind, options }) =>
      (["output", "leg", "tap"] as const).flatMap((role) => {
        const switches = kind.power(options).switches ?? [];
        const by = (port: string) => switches.find((s) => s.port === port)?.by;
        const ports = outputs(kind, options, [role]);
        for (const sort of new Set(ports.map((p) => by(p.id)))) {
          const sisters = ports.filter((p) => by(p.id) === sort);
          expect(new Set(sisters.map((p) => arriving(kind, options, p.id))).size, kind.kind).toBe(1);
        }
        return ports.length > 1 ? [kind.kind] : [];
      }),
    );
    expect([...new Set(seen)]).toEqual([
      "lnb-universal",
      "lnb-monoblock",
      "lnb-wideband",
      "lnb-c-band",
      "lnb-ka-band",
      "lnb-stacked",
      "stacking-converter",
      "multiswitch",
      "splitter",
      "tap",
      "t-joint",
    ]);
  });

  test("gives something of its own as a plane, a band or a socket", () => {
    const seen = each.flatMap(({ kind, options }) => {
      const ports = outputs(kind, options, ["plane", "band", "socket"]);
      const different = new Set(ports.map((p) => arriving(kind, options, p.id)));
      expect(different.size, kind.kind).toBe(ports.length);
      return ports.length > 1 ? [kind.kind] : [];
    });
    expect(seen).toEqual(
      expect.arrayContaining(["lnb-quattro", "lnb-wideband", "diplexer-split", "outlet-quad"]),
    );
  });

  test("is a trunk where the same goes on, at less loss than to any tap or socket beside it", () => {
    const lossAt = (kind: PartKind, options: AnyOptions, port: string) =>
      kind
        .signal(options, { id: "x", powered: true })
        .paths?.filter((p) => p.to === port)
        .map((p) => -gainDbAt(p.response, 862));
    const seen = each.flatMap(({ kind, options }) => {
      const [trunk] = outputs(kind, options, ["trunk"]);
      const beside = outputs(kind, options, ["tap", "socket"]);
      if (!trunk || beside.length === 0) return [];
      const losses = beside.flatMap((p) => lossAt(kind, options, p.id) ?? []);
      expect(lossAt(kind, options, trunk.id)?.[0], kind.kind).toBeLessThan(Math.min(...losses));
      return [kind.kind];
    });
    expect([...new Set(seen)]).toEqual(["tap", "outlet-through"]);
  });
});

describe("an option", () => {
  const DECIBELS = ["dB", "dBµV", "dBi", "dBW", "dBµV/m"];
  const decibels = OPTIONS.filter(({ meta }) => DECIBELS.includes(meta.unit ?? ""));

  test("in decibels has the values in which it is sold, or a step", () => {
    expect(decibels.length).toBeGreaterThan(40);
    expect(names(decibels.filter(({ meta }) => !meta.sold && !meta.step && !meta.turnsBy))).toEqual([]);
  });

  test("in decibels has the spread of real parts, unless its typical value is nought: a setting left alone", () => {
    const typicalValue = ({ kind, key }: Option) => defaultOptions(kind)[key];
    // A return loss moves no level by itself: what it makes together with others is counted as ripple.
    const moving = decibels.filter((o) => o.meta.means !== "return loss");
    const missing = moving.filter((o) => typicalValue(o) !== 0 && !(Number(o.meta.spreadDb) > 0));
    expect(names(missing)).toEqual([]);
  });

  test("that decides the loss of a length has its spread as a share of the loss", () => {
    const grades = OPTIONS.filter(({ meta }) => meta.means === "grade");
    expect(names(grades)).toEqual(["cable.grade"]);
    expect(names(grades.filter(({ meta }) => !(Number(meta.spreadShare) > 0)))).toEqual([]);
  });

  test("is sold in values that it can have, lowest first, its typical one among them", () => {
    for (const { kind, key, meta, name } of OPTIONS) {
      if (!meta.sold) continue;
      const { values } = meta.sold;
      expect(meta.sold.source, name).toMatch(/\S/);
      expect(values, name).toContain(defaultOptions(kind)[key]);
      expect(
        values.filter((value) => !accepts(kind, { [key]: value })),
        name,
      ).toEqual([]);
      const numbers = values.map(Number).filter(Number.isFinite);
      expect(numbers, name).toEqual([...numbers].sort((a, b) => a - b));
    }
  });

  test("that levels a line has values to choose from", () => {
    const levelling = CATALOGUE.flatMap((kind) =>
      optionsMeaning(kind, "gain", "slope", "tap loss", "chosen loss").map((key) => ({ kind, key })),
    );
    expect(levelling.length).toBe(18);
    expect(levelling.filter(({ kind, key }) => standardValues(kind, key).length < 4)).toEqual([]);
  });

  test("that is turned at the part has steps from end to end of its range", () => {
    // Whole decibels from 0 to 20: the slope of a distribution amplifier as its field states it.
    const amp = kindOf("amp-distribution");
    const values = amp ? standardValues(amp, "slopeDb") : [];
    expect([values.length, values[0], values.at(-1)]).toEqual([21, 0, 20]);
    // Steps of one from −20 to 45, nought among them: no minus nought, which a file cannot hold.
    const radio = amp ? standardValues(amp, "radioGainDb") : [];
    expect(radio.find((value) => value === 0)).toBe(0);
    const turned = OPTIONS.filter(({ meta }) => meta.turnsBy !== undefined);
    expect(names(turned.filter(({ kind, key }) => onSiteOf(kind, key) !== "setting"))).toEqual([]);
  });

  test("of somebody else's transmitters or of the place is not ours to turn", () => {
    const sources = OPTIONS.filter(({ meta }) => meta.means === "source level");
    expect(sources.length).toBe(14);
    expect(names(sources.filter(({ kind, key }) => onSiteOf(kind, key) !== "not ours"))).toEqual([]);
  });

  test("of a receiver is set in its menu, but for the volts and the current that it was built with", () => {
    const receiver = kindOf("receiver-sat");
    if (!receiver) throw new Error("no receiver");
    expect(["polarisation", "half", "position", "state"].map((key) => onSiteOf(receiver, key))).toEqual(
      Array(4).fill("setting"),
    );
    expect(["volts13", "volts18", "limitMa"].map((key) => onSiteOf(receiver, key))).toEqual(
      Array(3).fill(undefined),
    );
  });

  test("counts only when it says so", () => {
    const conditional = OPTIONS.filter(({ meta }) => meta.onlyWhen);
    expect(conditional.length).toBeGreaterThan(20);
    for (const option of conditional) {
      const { kind, meta, name } = option;
      const counting = counted(meta);
      expect(accepts(kind, counting), name).toBe(true);
      expect(isHeeded(option, counting), name).toBe(true);
      for (const [other, wanted] of Object.entries(meta.onlyWhen ?? {})) {
        const otherMeta = describedOptions(kind).get(other);
        const all = otherMeta ? valuesOf(otherMeta) : [];
        const elsewhere = all.filter((v) => (Array.isArray(wanted) ? !wanted.includes(v) : v !== wanted));
        expect(elsewhere.length, name).toBeGreaterThan(0);
        for (const value of elsewhere)
          expect(isHeeded(option, { ...counting, [other]: value }), `${name}, ${other} ${value}`).toBe(false);
      }
    }
  });

  test("says so when a choice or a switch beside it makes it count", () => {
    const forgotten = OPTIONS.filter(
      ({ meta }) => meta.control === "number" || meta.control === "rows",
    ).flatMap((option) => {
      const { kind, key, meta, name } = option;
      // Without mains, unplugged or in the wrong mode nothing counts: those are defects and no choices.
      return [...describedOptions(kind)].flatMap(([other, { soundValue, ...otherMeta }]) => {
        if (other === key || soundValue !== undefined || meta.onlyWhen?.[other] !== undefined) return [];
        const heeded = new Set(
          valuesOf(otherMeta).map((value) => isHeeded(option, { ...counted(meta), [other]: value })),
        );
        return heeded.size > 1 ? [`${name}: ${other}`] : [];
      });
    });
    // Either of two switches is enough for the level of handsets.
    expect(forgotten).toEqual(["pick-up.handsetDbuv: handset700", "pick-up.handsetDbuv: handset800"]);
  });

  test("that passes supply does so at the values that it names, and at no other", () => {
    const passing = OPTIONS.filter(({ meta }) => meta.passes);
    expect(passing.length).toBeGreaterThan(10);
    for (const { kind, key, meta, name } of passing)
      for (const value of valuesOf(meta)) {
        const passes = (kind.power(typical(kind, { [key]: value })).paths ?? []).length > 0;
        expect(passes, `${name} ${value}`).toBe(meta.passes?.includes(value));
      }
  });

  test("that lets supply through some legs or none says that it does", () => {
    const forgotten = OPTIONS.filter(({ kind, key, meta }) => {
      const counts = valuesOf(meta).map((v) => (kind.power(typical(kind, { [key]: v })).paths ?? []).length);
      return kind.family !== "convert" && counts.includes(0) && counts.some((n) => n > 0) && !meta.passes;
    });
    // A shorted or broken joint is a defect and no choice.
    expect(names(forgotten)).toEqual(["bad-joint.fault"]);
  });

  test("that switches a mains unit off says so, and is sound when on", () => {
    const switches = OPTIONS.filter(
      ({ kind, key, meta }) =>
        meta.control === "switch" &&
        kind.power(typical(kind)).selfPowered === true &&
        kind.power(typical(kind, { [key]: false })).selfPowered !== true,
    );
    expect(switches.length).toBe(8);
    expect(names(switches.filter(({ meta }) => meta.means !== "mains" || meta.soundValue !== true))).toEqual(
      [],
    );
  });

  test("that says what a receiver asks for has that meaning", () => {
    const asked: readonly (readonly ["polarisation" | "half" | "position", Meaning])[] = [
      ["polarisation", "asked polarisation"],
      ["half", "asked half"],
      ["position", "asked position"],
    ];
    let found = 0;
    for (const { kind, key, meta, name } of OPTIONS.filter(({ kind }) => kind.trade.job === "receiver"))
      for (const [part, meaning] of asked) {
        const requests = (options: AnyOptions) =>
          JSON.stringify(kind.power(options).supplies?.flatMap((s) => s.request?.[part] ?? []) ?? []);
        const all = new Set(
          valuesOf(meta)
            .filter(
              (value) =>
                value !== "standby" &&
                value !== "unplugged" &&
                value !== "universal" &&
                meta.means !== "receiver supply",
            )
            .map((value) => requests(typical(kind, { [key]: value }))),
        );
        if (all.size < 2) continue;
        found++;
        expect(meta.means, name).toBe(meaning);
      }
    // One input has three, two inputs have six.
    expect(found).toBe(9);
  });
});

/** Options with which an option counts. */
function counted({ onlyWhen = {} }: FieldMeta): AnyOptions {
  return Object.fromEntries(
    Object.entries(onlyWhen).map(([key, wanted]) => [key, Array.isArray(wanted) ? wanted[0] : wanted]),
  );
}

/** Whether another value of an option changes anything that a part does. */
function isHeeded({ kind, key, meta }: Option, around: AnyOptions): boolean {
  const values =
    meta.control === "rows"
      ? [[], defaultOptions(kind)[key]]
      : meta.control === "choice"
        ? [valuesOf(meta)[0], valuesOf(meta).at(-1)]
        : meta.control === "switch"
          ? [false, true]
          : [meta.min, meta.max];
  const [a, b] = values.map((value) => {
    const options = typical(kind, { ...transmittersEast(kind, meta), ...around, [key]: value });
    return JSON.stringify([kind.signal(options, { id: "x", powered: true }), kind.power(options)], (_, v) =>
      ArrayBuffer.isView(v) ? [...(v as Float64Array)] : v,
    );
  });
  return a !== b;
}

/** Where an aerial points counts only for what does not come from there. */
function transmittersEast(kind: PartKind, asked: FieldMeta): AnyOptions {
  const polarisation = asked.means === "polarisation" ? "H" : "like";
  const lists = [...describedOptions(kind)].filter(([, meta]) => meta.row && "transmitter" in meta.row.shape);
  return Object.fromEntries(
    lists.map(([key]) => [
      key,
      (defaultOptions(kind)[key] as object[]).map((row) => ({ ...row, bearingDeg: 30, polarisation })),
    ]),
  );
}

describe("a defect", () => {
  const mendable = OPTIONS.filter(({ meta }) => meta.soundValue !== undefined);

  test("is found in no part as it comes out of the tray", () => {
    expect(CATALOGUE.flatMap((kind) => defectsOf(kind, defaultOptions(kind)))).toEqual([]);
  });

  test("can occur at every option that has a sound value, and is mended by that value", () => {
    expect(mendable.length).toBeGreaterThan(10);
    for (const { kind, key, meta, name } of mendable) {
      const others = meta.control === "number" ? [meta.max] : (meta.defectValues ?? valuesOf(meta));
      const at = (value: unknown) =>
        defectsOf(kind, typical(kind, { ...counted(meta), [key]: value })).filter((d) => d.option === key);
      expect(at(meta.soundValue), name).toEqual([]);
      const bad = others.filter((value) => value !== meta.soundValue);
      expect(bad.length, name).toBeGreaterThan(0);
      for (const value of bad)
        expect(at(value), name).toEqual([{ option: key, value, soundValue: meta.soundValue }]);
    }
  });

  // What anybody in the trade would call broken, misaligned or wrong; common practice, no source.
  test.each([
    ["multiswitch", { mainsOn: false }, [["mainsOn", true]]],
    ["amp-distribution", { switchedOn: false }, [["switchedOn", true]]],
    ["power-inserter", { switchedOn: false }, [["switchedOn", true]]],
    ["dish", { pointingLossDb: 12 }, [["pointingLossDb", 0.5]]],
    ["dish", { pointingLossDb: 0.9, rainLossDb: 6 }, []],
    ["cable", { grade: "clad-0.8" }, [["grade", "copper-1.0"]]],
    ["cable", { grade: "copper-0.8", loopOhmPerKm: 188 }, []],
    ["cable", { grade: "own", loopOhmPerKm: 188 }, [["loopOhmPerKm", 36]]],
    ["receiver-sat", { state: "unplugged" }, [["state", "on"]]],
    ["receiver-sat", { state: "standby" }, []],
    ["receiver-stacked", { mode: "universal" }, [["mode", "single-cable"]]],
    ["load", { dcBlocked: false }, [["dcBlocked", true]]],
    ["splitter", { dc: "none", type: "resistive" }, [["type", "hybrid"]]],
  ])("in %s with %o is %o", (key, changed, expected) => {
    const kind = kindOf(key);
    const found = kind ? defectsOf(kind, typical(kind, changed)) : [];
    expect(found.map((d) => [d.option, d.soundValue])).toEqual(expected);
  });
});
