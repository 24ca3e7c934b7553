/** A fault of ours: says so, says what is safe, and offers the way back. Also for what fails outside of drawing. */
import { Component, type ReactNode, useEffect, useState } from 'react';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { randomId } from '../sync/random-id.ts';

interface FaultState {
  readonly fault: { readonly message: string; readonly number: string } | null;
}

const LONGEST_NUMBER = 8;

const faultOf = (error: unknown): FaultState => ({
  fault: {
    message: error instanceof Error ? error.message : String(error),
    number: randomId().slice(0, LONGEST_NUMBER),
  },
});

export class FaultBoundary extends Component<{ readonly children: ReactNode }, FaultState> {
  override state: FaultState = { fault: null };

  static getDerivedStateFromError(error: unknown): FaultState {
    return faultOf(error);
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (!fault) return this.props.children;
    return (
      <main className="page narrow">
        <div className="callout callout-stop" role="alert">
          <strong>
            <VerdictMark verdict="stop" />A fault of Bonewright's own, number {fault.number}
          </strong>
          <p>Nothing was lost: every entry is kept on this device and in the record. What it says: {fault.message}.</p>
          <p className="callout-actions">
            <button type="button" className="button" onClick={() => location.reload()}>
              Load this page again
            </button>
            <a className="button" href="/">
              All patients
            </a>
          </p>
        </div>
      </main>
    );
  }
}

/** Work in the background that failed: one line at the foot, until it is closed. */
export function FaultLine() {
  const [{ fault }, setFault] = useState<FaultState>({ fault: null });
  useEffect(() => {
    const show = ({ reason }: PromiseRejectionEvent) => setFault(faultOf(reason));
    addEventListener('unhandledrejection', show);
    return () => removeEventListener('unhandledrejection', show);
  }, []);
  if (!fault) return null;
  return (
    <div className="fault-line" role="alert">
      <VerdictMark verdict="stop" />
      <span>
        A fault of Bonewright's own, number {fault.number}: {fault.message}. Nothing recorded is lost.
      </span>
      <button type="button" className="button-small" onClick={() => setFault({ fault: null })}>
        Close
      </button>
    </div>
  );
}
