/**
 * To be imported before any schema is made: the schema library would write code of its own to check faster, and try out
 * whether it may. The page's content policy forbids that (src/build/policy.ts) and would report every try.
 */
import { config } from "zod";

config({ jitless: true });
