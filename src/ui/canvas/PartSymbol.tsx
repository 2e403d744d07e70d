/** A part's drawing. Decoration: its name always stands beside it. */
import { SYMBOLS, type SymbolDrawing, type SymbolName } from "../../parts/symbols.ts";

export function PartSymbol({ name }: { readonly name: SymbolName }) {
  const drawing: SymbolDrawing = SYMBOLS[name];
  return (
    <svg className="part-symbol" viewBox="0 0 48 32" aria-hidden="true">
      {drawing.lines.map((d) => (
        <path key={d} d={d} className="part-symbol-line" />
      ))}
      {drawing.fill?.map((d) => (
        <path key={d} d={d} className="part-symbol-fill" />
      ))}
    </svg>
  );
}
