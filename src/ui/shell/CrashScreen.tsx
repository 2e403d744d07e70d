import { Component, type ReactNode } from "react";
import { useApp } from "../../store/app.ts";
import { downloadDesign, openEmpty } from "../features/documents/actions.ts";

type Props = { readonly children: ReactNode };
type State = { readonly problem: string | null };

/** Catches a fault in drawing: the design is still in the store, and can be taken along as a file. */
export class CrashScreen extends Component<Props, State> {
  override state: State = { problem: null };

  static getDerivedStateFromError(error: unknown): State {
    return { problem: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    if (this.state.problem === null) return this.props.children;
    const again = () => this.setState({ problem: null });
    return (
      <div className="fallen" role="alert">
        <h1>Something went wrong while drawing</h1>
        <p>The design itself is untouched. Download it to be safe, then try again.</p>
        <p className="quiet small">
          <code>{this.state.problem}</code>
        </p>
        <div className="button-row">
          <button type="button" className="button main" onClick={() => downloadDesign()}>
            Download the file
          </button>
          <button type="button" className="button" onClick={again}>
            Try again
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              useApp.getState().undo();
              again();
            }}
          >
            Undo the last change
          </button>
          <button
            type="button"
            className="button"
            onClick={async () => {
              await openEmpty();
              again();
            }}
          >
            Start an empty design
          </button>
        </div>
      </div>
    );
  }
}
