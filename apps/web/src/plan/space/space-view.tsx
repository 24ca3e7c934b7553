/** The construct in space as a line drawing: drag or arrow keys turn it, plus and minus zoom, F fades the bone, Home turns back. */
import './space.css';
import type { Case } from '@bonewright/construct';
import { type KeyboardEvent, useMemo, useState } from 'react';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { type Eye, type Flat, type Piece, spacePieces } from '../../drawing/geometry/space-pieces.ts';
import { useDrag } from '../ruler/use-drag.ts';

interface SpaceViewProps {
  readonly patientCase: Case;
  readonly placement: Placement;
  readonly selected: number;
}

const START: Eye = { turnDeg: 24, leanDeg: 12 };
const STEP_DEG = 10;
const DEG_PER_PX = 0.6;
const MOST_LEAN_DEG = 85;
const ZOOM_STEP = 1.2;
const ROOM_MM = 1.5;

export function SpaceView({ patientCase, placement, selected }: SpaceViewProps) {
  const [eye, setEye] = useState(START);
  const [zoom, setZoom] = useState(1);
  const [isFaded, setFaded] = useState(false);
  const pieces = useMemo(
    () => spacePieces(patientCase, placement, { ...eye, turnDeg: eye.turnDeg + placement.aboutDeg }, isFaded),
    [patientCase, placement, eye, isFaded],
  );
  const frame = useMemo(() => frameOf(pieces, patientCase.bone.lengthMm, zoom), [pieces, patientCase, zoom]);
  const turn = (from: Eye, right: number, down: number) =>
    setEye({ turnDeg: from.turnDeg - right, leanDeg: clampLean(from.leanDeg + down) });
  const drag = useDrag(
    () => eye,
    (from, right, down) => turn(from, right * DEG_PER_PX, down * DEG_PER_PX),
  );
  const back = () => {
    setEye(START);
    setZoom(1);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const done = keyAction(event.key, {
      eye,
      turn,
      zoomBy: (by) => setZoom((now) => now * by),
      fade: () => setFaded((now) => !now),
      back,
    });
    if (done) event.preventDefault();
  };
  return (
    <section className="planner-space" aria-labelledby="space-title">
      <header className="side-head">
        <h2 id="space-title">In space</h2>
        <span className="quiet">drag to turn</span>
      </header>
      <div className="space">
        <svg
          {...drag}
          viewBox={frame}
          preserveAspectRatio="xMidYMid meet"
          className="space-drawing"
          role="application"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: it turns by keys, as its role says
          tabIndex={0}
          aria-roledescription="drawing that turns"
          aria-label={`The plan in space, turned ${Math.round(eye.turnDeg)} degrees, leaned ${Math.round(eye.leanDeg)} degrees. Arrow keys turn, plus and minus zoom, F fades the bone, Home turns back.`}
          onKeyDown={onKeyDown}
        >
          {pieces.map((piece, i) => (
            <PieceMark
              key={i}
              piece={piece}
              isSelected={piece.of === 'pin' && piece.index === selected}
              isFaded={isFaded}
            />
          ))}
        </svg>
        <div className="space-buttons">
          <button type="button" className="button-small" aria-pressed={isFaded} onClick={() => setFaded(!isFaded)}>
            Fade bone
          </button>
          <button type="button" className="button-small" onClick={() => setZoom(zoom / ZOOM_STEP)}>
            −<span className="sr-only"> smaller</span>
          </button>
          <button type="button" className="button-small" onClick={() => setZoom(zoom * ZOOM_STEP)}>
            +<span className="sr-only"> larger</span>
          </button>
        </div>
      </div>
    </section>
  );
}

const clampLean = (deg: number) => Math.min(MOST_LEAN_DEG, Math.max(-MOST_LEAN_DEG, deg));

interface Hands {
  readonly eye: Eye;
  readonly turn: (from: Eye, right: number, down: number) => void;
  readonly zoomBy: (factor: number) => void;
  readonly fade: () => void;
  readonly back: () => void;
}

const TURNS = new Map<string, readonly [right: number, down: number]>([
  ['ArrowLeft', [-STEP_DEG, 0]],
  ['ArrowRight', [STEP_DEG, 0]],
  ['ArrowUp', [0, -STEP_DEG]],
  ['ArrowDown', [0, STEP_DEG]],
]);
const ZOOMS = new Map([
  ['+', ZOOM_STEP],
  ['=', ZOOM_STEP],
  ['-', 1 / ZOOM_STEP],
]);

/** Does what the key means here; false where it means nothing. */
function keyAction(key: string, { eye, turn, zoomBy, fade, back }: Hands): boolean {
  const way = TURNS.get(key);
  const factor = ZOOMS.get(key);
  if (way) turn(eye, ...way);
  else if (factor) zoomBy(factor);
  else if (key.toLowerCase() === 'f') fade();
  else if (key === 'Home') back();
  else return false;
  return true;
}

/** Room for the whole bone whichever way it is turned, so that turning does not make it jump. */
function frameOf(pieces: readonly Piece[], lengthMm: number, zoom: number): string {
  const points = pieces.flatMap(({ face, disc }) => (disc ? [...face, ...corners(disc)] : face));
  const u = points.map(([x]) => x);
  const v = points.map(([, y]) => y);
  const [uMiddle, vMiddle] = [(Math.min(...u) + Math.max(...u)) / 2, (Math.min(...v) + Math.max(...v)) / 2];
  const height = (Math.max(lengthMm, Math.max(...v) - Math.min(...v)) + 2 * ROOM_MM) / zoom;
  const width = (Math.max(...u) - Math.min(...u) + 2 * ROOM_MM) / zoom;
  return `${uMiddle - width / 2} ${vMiddle - height / 2} ${width} ${height}`;
}

function corners({ centre: [u, v], radii }: NonNullable<Piece['disc']>): Flat[] {
  const reach = Math.max(...radii);
  return [
    [u - reach, v - reach],
    [u + reach, v + reach],
  ];
}

interface PieceMarkProps {
  readonly piece: Piece;
  readonly isSelected: boolean;
  readonly isFaded: boolean;
}

function PieceMark({ piece: { of, face, lines, ring, disc }, isSelected, isFaded }: PieceMarkProps) {
  const fill = isSelected ? 'var(--moss)' : of === 'bone' ? 'var(--bone)' : 'var(--leaf)';
  const stroke = isSelected ? 'var(--moss)' : 'var(--ink)';
  if (disc) {
    const [rx, ry] = disc.radii;
    const at = `translate(${disc.centre[0]} ${disc.centre[1]}) rotate(${disc.tiltDeg})`;
    return <ellipse className="space-disc" rx={rx} ry={ry} transform={at} fill={fill} stroke={stroke} />;
  }
  return (
    <>
      <path d={pathThrough(face, true)} fill={fill} fillOpacity={of === 'bone' && isFaded ? FADED : 1} />
      <path d={lines.map((line) => pathThrough(line, false)).join('')} className="space-line" stroke={stroke} />
      {ring.length > 0 && <path d={pathThrough(ring, false)} className="space-ring" stroke={stroke} />}
    </>
  );
}

const FADED = 0.25;

const pathThrough = (points: readonly Flat[], closed: boolean): string =>
  points.map(([u, v], i) => `${i === 0 ? 'M' : 'L'}${u.toFixed(3)} ${v.toFixed(3)}`).join('') + (closed ? 'Z' : '');
