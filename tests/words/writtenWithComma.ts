/** Imported before everything that holds texts: in German the decimal sign is a comma (CLDR). */
import { writeNumbersAs } from "../../src/words/numbers.ts";

writeNumbersAs("de");
