// What stands there when a part of the page cannot be drawn: never an empty window, least of all beside somebody in a suit. Whatever
// was written or recorded lies in the browser's store already, so that reading the page again goes on from there. A class,
// because only a class can catch what fails while it is drawn.
import { Component, type ReactNode } from 'react';

interface Props {
  /** Another place is another try. */
  readonly place: string;
  readonly children: ReactNode;
}

interface State {
  /** The place whose drawing failed. */
  readonly fell?: string | undefined;
  readonly has: boolean;
}

function Fallen() {
  return (
    <div className="narrow" role="alert">
      <h1>This page has stopped</h1>
      <p>
        Something in it could not be shown. What was written or recorded before stays on this device. In an
        exit, read on from the printed script.
      </p>
      <p className="row">
        <button type="button" className="button" onClick={() => window.location.reload()}>
          Load it again
        </button>{' '}
        <a href="/" className="inline-link">
          All procedures
        </a>
      </p>
    </div>
  );
}

export class Standing extends Component<Props, State> {
  override state: State = { has: false };

  static getDerivedStateFromError(): State {
    return { has: true };
  }

  static getDerivedStateFromProps({ place }: Props, { fell, has }: State): State | null {
    if (!has) return null;
    if (fell === undefined) return { fell: place, has };
    return fell === place ? null : { fell: undefined, has: false };
  }

  override render(): ReactNode {
    return this.state.has ? <Fallen /> : this.props.children;
  }
}
