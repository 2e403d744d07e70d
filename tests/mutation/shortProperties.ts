/** Properties are tried on the same values each time, and not for long: a mutant must not live or die by luck. */
import fc from "fast-check";

fc.configureGlobal({ seed: 1, interruptAfterTimeLimit: 100 });
