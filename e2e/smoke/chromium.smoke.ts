import { CHROMIUM } from "./puppeteer.ts";
import { smoke } from "./run.ts";

smoke(CHROMIUM);
