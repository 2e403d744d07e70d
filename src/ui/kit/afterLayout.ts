/**
 * Acts once what was just drawn has its place and size: in the second frame from now, for the first is the one
 * in which panes that open take their room. Returns how to call it off.
 */
export function afterLayout(act: () => void): () => void {
  let frame = requestAnimationFrame(() => {
    frame = requestAnimationFrame(act);
  });
  return () => cancelAnimationFrame(frame);
}
