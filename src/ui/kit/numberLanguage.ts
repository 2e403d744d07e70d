/**
 * Imported before everything that holds texts: fixed ones have their figures as soon as their module is read, in the
 * language of whoever uses the browser.
 */
import { writeNumbersAs } from "../../words/numbers.ts";

writeNumbersAs(navigator.language);
