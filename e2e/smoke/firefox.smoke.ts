import { FIREFOX } from "./puppeteer.ts";
import { smoke } from "./run.ts";

smoke(FIREFOX);
