/** Length, angle and diameter by hand, with what each gives. */
import { CLICK_WORDS, letterOf, MEASURE_KINDS, measured, resultWords } from './hand-measure.ts';
import type { Measures } from './use-measures.ts';

export function MeasureStep({ measures }: { readonly measures: Measures }) {
  const { done, current, mmPerPixel } = measures;
  return (
    <>
      <span className="step-marks">
        {MEASURE_KINDS.map((kind) => (
          <button
            key={kind}
            type="button"
            className="button-small"
            aria-pressed={current?.kind === kind}
            onClick={() => (current?.kind === kind ? measures.stop() : measures.start(kind))}
          >
            {kind}
          </button>
        ))}
      </span>
      {current && (
        <span className="caption">
          {CLICK_WORDS[current.kind].length - current.points.length} clicks to go. Each can be moved afterwards.
        </span>
      )}
      {done.length > 0 && (
        <ol className="measure-list">
          {done.map((one, i) => {
            const result = measured(one, mmPerPixel);
            return (
              <li key={one.id}>
                <span>
                  {letterOf(i)} {one.kind} <b>{result && resultWords(result)}</b>
                  {result?.noScale && <span className="caption"> {result.noScale}</span>}
                </span>
                <button type="button" className="link" onClick={() => measures.remove(one)}>
                  take back
                </button>
              </li>
            );
          })}
        </ol>
      )}
    </>
  );
}
