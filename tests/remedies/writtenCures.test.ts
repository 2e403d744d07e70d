/**
 * WC: what a finding says under "cure" is no empty word: in the rule's own example the idea that the sentence names
 * is tried by the search and proved. Which idea a sentence names is this table's own reading of the sentence.
 */
import { describe, expect, test } from "vitest";
import type { IdeaId } from "../../src/remedies/cureStep.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { cureOf } from "../../src/sentences/finding.ts";

const NAMED: Readonly<Record<string, readonly IdeaId[]>> = {};

describe("Written cures", () => {
  test.todo("x");
});
