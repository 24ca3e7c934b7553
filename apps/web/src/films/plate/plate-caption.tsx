/** The strip below a film: a bar of 10 mm at the bone, or that there is no scale yet; how near one looks, how it is turned. */
import { type Turn, turnWords } from './turn.ts';

interface PlateCaptionProps {
  readonly mmPerPixel: number | null;
  /** Screen pixels for one film pixel. */
  readonly scale: number;
  readonly turn: Turn;
}

const BAR_MM = 10;
/** Seen very near, a bar of 1 mm takes its place. */
const LONGEST_PX = 220;

export function PlateCaption({ mmPerPixel, scale, turn }: PlateCaptionProps) {
  const turned = turnWords(turn);
  const barMm = scale > 0 && mmPerPixel !== null && (BAR_MM / mmPerPixel) * scale > LONGEST_PX ? 1 : BAR_MM;
  const barPx = mmPerPixel === null ? 0 : (barMm / mmPerPixel) * scale;
  return (
    <p className="plate-caption">
      <span>
        {(scale * 100).toFixed(0)} %{turned && <strong className="plate-turned">{turned}</strong>}
      </span>
      {mmPerPixel === null ? (
        <span>no scale yet</span>
      ) : (
        <span className="plate-bar">
          {barMm} mm at the bone
          <svg width={barPx + 2} height="10" aria-hidden="true">
            <path d={`M1 1V9M1 5H${barPx + 1}M${barPx + 1} 1V9`} stroke="currentColor" fill="none" />
          </svg>
        </span>
      )}
    </p>
  );
}
