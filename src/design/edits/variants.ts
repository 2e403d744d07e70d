/** Adding, taking up, naming and dropping variants of a design. */
import type { Design, Variant } from "../design.ts";
import { LIMITS } from "../limits.ts";
import { withinSizeLimits } from "../sizeLimits.ts";
import { activeName } from "../variants.ts";
import { done, type Edit, refuse } from "./edit.ts";

/**
 * Puts the variant at work aside and goes on in a new one: a copy of it, or with the parts and wires given
 * (a cure tried out, an empty canvas).
 */
export function addVariant(
  design: Design,
  name: string,
  content: Pick<Design, "parts" | "wires"> = design,
): Edit {
  const text = name.trim();
  const problem = whyNotName(design, text);
  if (problem !== null) return refuse(problem);
  const resting = design.variants ?? [];
  const { parts, wires } = content;
  const variants = [...resting, setAside(design)];
  return withinSizeLimits(design, done({ ...design, parts, wires, variant: text, variants }));
}

/** Takes up another variant; the one at work rests in its place. */
export function switchVariant(design: Design, name: string): Edit {
  if (name === activeName(design)) return done(design);
  const resting = design.variants ?? [];
  const chosen = resting.find((v) => v.name === name);
  if (!chosen) return refuse(`There is no variant “${name}”.`);
  const { parts, wires } = chosen;
  const variants = resting.map((v) => (v === chosen ? setAside(design) : v));
  return done({ ...design, parts, wires, variant: name, variants });
}

export function renameVariant(design: Design, name: string, newName: string): Edit {
  const text = newName.trim();
  if (text === name) return done(design);
  const isActive = name === activeName(design);
  if (!isActive && !design.variants?.some((v) => v.name === name))
    return refuse(`There is no variant “${name}”.`);
  const problem = whyNotName(design, text);
  if (problem !== null) return refuse(problem);
  if (isActive) return done({ ...design, variant: text });
  const variants = (design.variants ?? []).map((v) => (v.name === name ? { ...v, name: text } : v));
  return done({ ...design, variants });
}

/** Drops a variant; in place of the one at work the first that rests is taken up. */
export function removeVariant(design: Design, name: string): Edit {
  const resting = design.variants ?? [];
  const [first] = resting;
  if (name !== activeName(design)) {
    const left = resting.filter((v) => v.name !== name);
    if (left.length === resting.length) return refuse(`There is no variant “${name}”.`);
    return done(withResting(design, left));
  }
  if (!first) return refuse("This is the only variant; delete the design instead.");
  const { parts, wires } = first;
  return done(withResting({ ...design, parts, wires, variant: first.name }, resting.slice(1)));
}

function setAside(design: Design): Variant {
  return { name: activeName(design), parts: design.parts, wires: design.wires };
}

function withResting({ variants: _, ...rest }: Design, variants: readonly Variant[]): Design {
  return variants.length === 0 ? rest : { ...rest, variants };
}

function whyNotName(design: Design, text: string): string | null {
  if (text === "") return "A variant needs a name.";
  if (text.length > LIMITS.variantNameLength)
    return `A name has at most ${LIMITS.variantNameLength} characters; this one has ${text.length}.`;
  const taken = text === activeName(design) || design.variants?.some((v) => v.name === text);
  return taken ? `There is a variant “${text}” already.` : null;
}
