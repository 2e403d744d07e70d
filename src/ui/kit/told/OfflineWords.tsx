import { useOfflineState } from "./offlineState.ts";

const WORDS = {
  stored: "This page is stored on this device. It opens without network, with all examples and your designs.",
  file: "This page is a file on this device. It needs no network.",
  no: "This browser has not stored the page, so it needs the network to open.",
};

/** Whether the page opens without network, in a sentence. */
export function OfflineWords() {
  const kept = useOfflineState((s) => s.kept);
  return <p className="quiet small">{WORDS[kept]}</p>;
}
