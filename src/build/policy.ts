/**
 * The content policy of the built page, the strictest it works under: nothing from elsewhere, nothing to elsewhere, no
 * code from text. Styles are set by the CSSOM only, which needs no leave; the one library that would write style
 * elements is replaced (src/ui/kit/styleSheet.ts).
 */
import { createHash } from "node:crypto";
import type { Plugin } from "vite";

type Policy = Readonly<Record<string, string>>;

/** Scripts, styles and workers are files beside the page. */
const BESIDE: Policy = {
  "default-src": "'none'",
  "script-src": "'self'",
  "style-src": "'self'",
  "img-src": "'self'",
  "font-src": "'self'",
  "worker-src": "'self'",
  "manifest-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
};

/** Everything lies in the page: its one script and one style are known by what they say, workers are made of blobs. */
const inside = (page: string): Policy => ({
  "default-src": "'none'",
  "script-src": hashesOf(page, "script"),
  "style-src": hashesOf(page, "style"),
  "img-src": "data:",
  "font-src": "data:",
  "worker-src": "blob:",
  "base-uri": "'none'",
  "form-action": "'none'",
});

/** Puts the policy into a page whose scripts and styles are files beside it. */
export function policyBeside(): Plugin {
  return {
    name: "downlead:policy",
    apply: "build",
    transformIndexHtml: { order: "post", handler: (page) => withPolicy(page, BESIDE) },
  };
}

/** The same for a page that holds all in itself; call it when nothing in the page changes any more. */
export function withPolicyInside(page: string): string {
  return withPolicy(page, inside(page));
}

/** Behind the encoding, which has to come first, and before anything that it governs. */
function withPolicy(page: string, policy: Policy): string {
  const content = Object.entries(policy).map((rule) => rule.join(" "));
  const meta = `<meta http-equiv="Content-Security-Policy" content="${content.join("; ")}" />`;
  const encoding = '<meta charset="utf-8" />';
  if (!page.includes(encoding)) throw new Error(`The page has no ${encoding} to put its policy behind.`);
  return page.replace(encoding, () => `${encoding}\n    ${meta}`);
}

/** What a policy calls the texts of elements of one name. */
function hashesOf(page: string, name: "script" | "style"): string {
  // A script may speak of styles without being one.
  const part = name === "style" ? page.replace(/<script[^>]*>[\s\S]*?<\/script>/g, "") : page;
  const texts = part.matchAll(new RegExp(`<${name}[^>]*>([\\s\\S]*?)</${name}>`, "g"));
  const hashes = [...texts].map(
    ([, text = ""]) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`,
  );
  return hashes.join(" ");
}
