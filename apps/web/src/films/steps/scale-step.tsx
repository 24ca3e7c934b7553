/** How large a pixel is at the bone: by a steel ball, an implant of known diameter, a known scale or the geometry; what the file says is shown beside. */
import type { Spacing } from '@bonewright/film';
import { Choice } from '../../form/choice.tsx';
import { Field } from '../../form/field.tsx';
import { numberFault } from '../../form/read-number.ts';
import { figure, threeFigures } from '../../plan/words.ts';
import type { CalibrationDraft, CalibrationField, CalibrationKind } from '../marks/calibration-draft.ts';
import type { Target } from '../marks/target.ts';
import type { Marks } from '../marks/use-marks.ts';
import type { FilmScale } from '../measures/use-scale.ts';

interface ScaleStepProps {
  readonly scale: FilmScale;
  readonly spacing: Spacing | null;
  readonly marks: Marks;
  readonly target: Target | null;
  readonly onTarget: (target: Target) => void;
}

const KINDS: readonly (readonly [CalibrationKind, string])[] = [
  ['ball', 'steel ball'],
  ['implant', 'implant'],
  ['scale', 'scale'],
  ['geometry', 'geometry'],
];

export function ScaleStep({ scale, spacing, marks, target, onTarget }: ScaleStepProps) {
  const { calibration } = marks.working;
  const change = (part: Partial<CalibrationDraft>) => ({ calibration: { ...calibration, ...part } });
  const field = (name: CalibrationField, label: string, unit: string, from0 = false) => (
    <Field
      label={label}
      unit={unit}
      inputMode="decimal"
      value={calibration[name]}
      onChange={(text) => marks.hold(change({ [name]: text }))}
      onBlur={() => marks.keep(change({}))}
      onEnter={() => marks.keep(change({}))}
      why={numberFault(calibration[name], { from0 })}
    />
  );
  return (
    <>
      <Choice
        label="What the scale is taken from"
        isLabelHidden
        options={KINDS}
        value={calibration.kind}
        onChange={(kind) => marks.keep(change({ kind }))}
      />
      {calibration.kind === 'ball' && (
        <>
          <div className="scale-ball">
            {field('diameterMm', 'Ball across', 'mm')}
            <button type="button" className="button" aria-pressed={target === 'ball'} onClick={() => onTarget('ball')}>
              {calibration.near ? 'Click it again' : 'Click near it'}
            </button>
          </div>
          <details className="scale-heights">
            <summary>The ball lay at another height than the bone</summary>
            <div className="scale-fields">
              {field('sourceToDetectorMm', 'Source to detector', 'mm')}
              {field('ballToDetectorMm', 'Ball above detector', 'mm', true)}
              {field('objectToDetectorMm', 'Bone above detector', 'mm', true)}
            </div>
          </details>
        </>
      )}
      {calibration.kind === 'implant' && (
        <>
          <div className="scale-ball">
            {field('diameterMm', 'Implant across', 'mm')}
            <button
              type="button"
              className="button"
              aria-pressed={target?.startsWith('implant') ?? false}
              onClick={() => onTarget('implant-1')}
            >
              {calibration.across.every((place) => place !== null) ? 'Click its edges again' : 'Click its two edges'}
            </button>
          </div>
          <span className="caption">
            A pin or wire in the bone, its diameter known. Straight across it, with the loupe: the shorter it is across,
            the less the scale is sure.
          </span>
        </>
      )}
      {calibration.kind === 'scale' && (
        <div className="scale-fields">
          {field('mmPerPixel', 'At the bone', 'mm a pixel')}
          {field('sdPercent', 'Give or take', '%', true)}
        </div>
      )}
      {calibration.kind === 'geometry' && (
        <div className="scale-fields">
          {field('sourceToDetectorMm', 'Source to detector', 'mm')}
          {field('objectToDetectorMm', 'Bone above detector', 'mm', true)}
          {field('detectorPitchMm', 'Detector pixel', 'mm')}
        </div>
      )}
      <ScaleFound scale={scale} />
      <SpacingWords spacing={spacing} />
    </>
  );
}

/** What any length is told on: the height error shows what it does to a bone of this length. */
const SAMPLE_MM = 50;

function ScaleFound({ scale: { mmPerPixel, ballHeightErrorPercent: percent } }: { readonly scale: FilmScale }) {
  if (mmPerPixel.value === null) return null;
  const offMm = (SAMPLE_MM * (percent ?? 0)) / 100;
  return (
    <span className="scale-found">
      <b>{mmPerPixel.value.toFixed(4)}</b> ± {threeFigures(mmPerPixel.sd ?? 0)} mm a pixel at the bone
      {percent !== null &&
        `. A ball 5 mm higher or lower than the bone makes every length ${figure(percent)} % wrong: what reads ${SAMPLE_MM} mm is ${figure(SAMPLE_MM - offMm)} to ${figure(SAMPLE_MM + offMm)} mm.`}
    </span>
  );
}

const PLANES = {
  detector: 'at the detector, larger than life at the bone',
  patient: 'said to be in the patient, by whoever wrote the file',
  unknown: 'in a plane that the file does not name',
} as const;

function SpacingWords({ spacing }: { readonly spacing: Spacing | null }) {
  if (!spacing) return <span className="caption">The file gives no size of a pixel.</span>;
  const { rowMm, colMm, plane } = spacing;
  const size = rowMm === colMm ? threeFigures(rowMm) : `${threeFigures(rowMm)} by ${threeFigures(colMm)}`;
  return (
    <span className="caption">
      The file says {size} mm a pixel, {PLANES[plane]}. It is not used.
    </span>
  );
}
