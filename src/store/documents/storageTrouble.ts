/** Why the browser did not store, in words for the user. */
import { LeavingError, NoAnswerError } from "./database.ts";

export function storageTrouble(error: unknown): string {
  return `Not saved: ${whyNot(error)}. Your work continues in this window only. Download the file before you close it.`;
}

/** The page goes away, and the storage was closed on purpose: nothing that anybody need be told. */
export function isLeaving(error: unknown): boolean {
  return error instanceof LeavingError || nameOf(error) === "AbortError";
}

function whyNot(error: unknown): string {
  if (error instanceof NoAnswerError) return "the browser’s storage does not answer";
  switch (nameOf(error)) {
    case "QuotaExceededError":
      return "the browser’s storage for this page is full";
    case "VersionError":
      return "another window runs a newer edition of this page; reload this one";
    case "SecurityError":
    case "ReferenceError":
    case "InvalidStateError":
      return "this browser does not let the page store anything (a private window, or storage switched off)";
    default:
      return "the browser’s storage reports an error";
  }
}

function nameOf(error: unknown): string {
  return error instanceof Error || error instanceof DOMException ? error.name : "";
}
