/** The examples: invented scenarios, each with a lesson. They open by address and serve as fixtures of the tests. */
import { checkFile } from "./check.ts";
import type { Design } from "./design.ts";
import blockCableNetwork from "./examples/block-cable-network.json" with { type: "json" };
import blockMultiswitch from "./examples/block-multiswitch.json" with { type: "json" };
import blockStacked from "./examples/block-stacked.json" with { type: "json" };
import dishTwoSatellites from "./examples/dish-two-satellites.json" with { type: "json" };
import houseSeparateCables from "./examples/house-separate-cables.json" with { type: "json" };
import houseStacked from "./examples/house-stacked.json" with { type: "json" };
import houseUniversal from "./examples/house-universal.json" with { type: "json" };
import houseWidebandFails from "./examples/house-wideband-fails.json" with { type: "json" };
import longSteelDrop from "./examples/long-steel-drop.json" with { type: "json" };
import splitSwitchedOutput from "./examples/split-switched-output.json" with { type: "json" };
import valleyTwoTransmitters from "./examples/valley-two-transmitters.json" with { type: "json" };

export type Example = {
  /** Name in the address. */
  readonly key: string;
  readonly title: string;
  readonly lesson: string;
  readonly load: () => Design;
};

/** Examples that teach one thing, under what that is. */
export type ExampleGroup = { readonly teaches: string; readonly examples: readonly Example[] };

/** In the order in which they teach; menus and lists show them so. */
export const EXAMPLE_GROUPS: readonly ExampleGroup[] = [
  { teaches: "One cable for everything", examples: [example("house-universal", houseUniversal)] },
  {
    teaches: "Why a combined feed fails",
    examples: [
      example("house-wideband-fails", houseWidebandFails),
      example("house-separate-cables", houseSeparateCables),
      example("house-stacked", houseStacked),
    ],
  },
  {
    teaches: "One cable, several receivers",
    examples: [example("split-switched-output", splitSwitchedOutput)],
  },
  {
    teaches: "Several directions, one house",
    examples: [
      example("valley-two-transmitters", valleyTwoTransmitters),
      example("dish-two-satellites", dishTwoSatellites),
    ],
  },
  {
    teaches: "A block of flats",
    examples: [
      example("block-multiswitch", blockMultiswitch),
      example("block-stacked", blockStacked),
      example("block-cable-network", blockCableNetwork),
    ],
  },
  { teaches: "Levels and supply on a long cable", examples: [example("long-steel-drop", longSteelDrop)] },
];

export const EXAMPLES: readonly Example[] = EXAMPLE_GROUPS.flatMap(({ examples }) => examples);

export function exampleOf(key: string): Example | undefined {
  return EXAMPLES.find((each) => each.key === key);
}

function example(key: string, file: { readonly title: string; readonly lesson: string }): Example {
  const load = () => {
    const reading = checkFile(file);
    // The examples are part of the program: a faulty one is a fault of the program.
    if (!reading.ok) throw new Error(`Example ${key}: ${reading.problem}`);
    return reading.design;
  };
  return { key, title: file.title, lesson: file.lesson, load };
}
