/**
 * Stands for the package react-style-singleton, through which dialogs keep the page behind them from scrolling
 * (vite.config.ts puts it in its place). The original writes a style element, which the content policy would have to
 * allow; a sheet made by script needs no leave.
 */
import { useEffect } from "react";

type Props = { readonly styles: string };

/** A component that puts its styles on the page while it is mounted anywhere; those of the first one count. */
export function styleSingleton(): (props: Props) => null {
  const sheet = new CSSStyleSheet();
  let mounted = 0;
  // biome-ignore lint/correctness/noComponentHookFactories: the name and the form of what it stands for.
  return function Styles({ styles }: Props) {
    useEffect(() => {
      if (mounted === 0) {
        sheet.replaceSync(styles);
        document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
      }
      mounted++;
      return () => {
        mounted--;
        if (mounted === 0) {
          document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== sheet);
        }
      };
    }, [styles]);
    return null;
  };
}
