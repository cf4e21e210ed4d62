/** What is shown when a part of this page itself fails? What was kept, and the way on. */
import { Component, type ReactNode } from "react";

interface FaultState {
  readonly word?: string;
}

export class Fault extends Component<{ readonly children: ReactNode }, FaultState> {
  override state: FaultState = {};

  static getDerivedStateFromError(error: unknown): FaultState {
    return { word: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    const { word } = this.state;
    if (word === undefined) return this.props.children;
    return (
      <main className="sheet">
        <section className="trouble" role="alert">
          <h1>A fault of ours</h1>
          <p>
            This page could not be drawn. What was saved is in the workshop's records; what waited to be saved is kept
            in this browser and goes out when the page is opened again.
          </p>
          <p>Quote this if you tell somebody: {word}</p>
          <div className="acts">
            <a className="btn" href="/" target="_self">
              Open the list of builds
            </a>
          </div>
        </section>
      </main>
    );
  }
}
