/** What is shown when a part of this page itself fails? What was kept, and the way on. */
import { say } from "@coldset/core/texts";
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
          <h1>{say("web.app.a-fault-of-ours")}</h1>
          <p>{say("web.fault.this-page-could-not-be-drawn")}</p>
          <p>
            {say("web.fault.quote-this-if-you-tell-somebody")}
            {word}
          </p>
          <div className="acts">
            <a className="btn" href="/" target="_self">
              {say("web.fault.open-the-list-of-builds")}
            </a>
          </div>
        </section>
      </main>
    );
  }
}
