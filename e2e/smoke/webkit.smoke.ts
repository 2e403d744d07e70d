import { smoke } from "./run.ts";
import { WEBKIT } from "./webkit.ts";

smoke(WEBKIT);
