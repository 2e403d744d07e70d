/**
 * Imported before everything else: in a browser that lacks what the app cannot do without, nothing of it starts, and
 * the words of index.html stay.
 */

if (!isNewEnough()) {
  document.documentElement.dataset.tooOld = "";
  throw new Error("This browser is too old for Downlead.");
}

/** One thing of each kind that came last to the supported browsers; MDN's tables say when. */
function isNewEnough(): boolean {
  try {
    // Safari 16.4, Firefox 113, Chrome 103.
    new CompressionStream("deflate-raw");
  } catch {
    return false;
  }
  // Chrome 111, Firefox 113, Safari 16.2; and Chrome 110, Firefox 115, Safari 16.
  return CSS.supports("color", "color-mix(in srgb, red, blue)") && "toSorted" in Array.prototype;
}
