/** A photograph of a film on a light box: by its four corners and its size it becomes a film of its own. */
import { faultLine, InputError } from '@bonewright/fault';
import { useState } from 'react';
import { Field, FieldWhy } from '../../form/field.tsx';
import { numberFault, readNumber } from '../../form/read-number.ts';
import type { OpenFilm } from '../engine/open-film.ts';
import type { CornerClicks } from './use-corners.ts';

interface PhotographStepProps {
  readonly open: OpenFilm;
  readonly corners: CornerClicks;
  readonly onSquared: (bytes: Uint8Array) => void;
}

export function PhotographStep({ open, corners, onSquared }: PhotographStepProps) {
  const [widthMm, setWidth] = useState('');
  const [heightMm, setHeight] = useState('');
  const [why, setWhy] = useState<string | null>(null);
  const size = { widthMm: readNumber(widthMm) ?? 0, heightMm: readNumber(heightMm) ?? 0 };
  const isReady = corners.corners !== null && size.widthMm > 0 && size.heightMm > 0;
  const square = async () => {
    if (!corners.corners) return;
    try {
      onSquared(await open.squared({ corners: corners.corners, filmMm: size }));
      corners.stop();
      setWhy(null);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      setWhy(faultLine(error));
    }
  };
  return (
    <details className="photograph">
      <summary>It is a photograph of a film</summary>
      <div className="scale-fields">
        <Field
          label="Film wide"
          unit="mm"
          inputMode="decimal"
          value={widthMm}
          onChange={setWidth}
          why={numberFault(widthMm)}
        />
        <Field
          label="Film high"
          unit="mm"
          inputMode="decimal"
          value={heightMm}
          onChange={setHeight}
          why={numberFault(heightMm)}
        />
      </div>
      <p className="photograph-acts">
        <button type="button" className="button" aria-pressed={corners.aim !== null} onClick={corners.start}>
          {corners.placed.length === 0 ? 'Click its four corners' : `${corners.placed.length} of 4, begin again`}
        </button>
        <button type="button" className="button" disabled={!isReady} onClick={() => void square()}>
          Make a film of it
        </button>
      </p>
      {why && <FieldWhy why={why} />}
      <p className="caption">
        A photograph is trusted little: its greys are not the film's. It gives angles; lengths only once it is
        calibrated on something at the bone.
      </p>
    </details>
  );
}
