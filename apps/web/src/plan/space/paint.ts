/** Paints the pieces of the drawing in space, farthest first, into a canvas. */
import type { Flat } from '../../drawing/geometry/space/eye.ts';
import type { Piece, PieceOf } from '../../drawing/geometry/space/piece.ts';
import type { Frame } from './frame.ts';

/** Colours of the page's theme by role. */
export interface Inks {
  readonly ink: string;
  readonly ink2: string;
  readonly leaf: string;
  readonly bone: string;
  readonly moss: string;
  readonly mossw: string;
}

export interface Painting {
  readonly pieces: readonly Piece[];
  readonly frame: Frame;
  /** The selected pin's place in the list of pins. */
  readonly selected: number;
  readonly isFaded: boolean;
}

const LINE_PX = 1.4;
const THIN_PX = 0.8;
const RING_ALPHA = 0.7;
const FADED_ALPHA = 0.25;
const BAND_ALPHA = 0.75;
const DASHES: Readonly<Partial<Record<PieceOf, readonly number[]>>> = { skin: [7, 4], canal: [3, 3] };

export function paint(canvas: HTMLCanvasElement, inks: Inks, painting: Painting): void {
  const context = canvas.getContext('2d');
  if (!context) return;
  const { frame } = painting;
  const dots = window.devicePixelRatio;
  canvas.width = Math.round(frame.widthPx * dots);
  canvas.height = Math.round(frame.heightPx * dots);
  context.scale(dots, dots);
  context.lineJoin = 'round';
  const at = ([u, v]: Flat): Flat => [(u - frame.left) * frame.pxPerMm, (v - frame.top) * frame.pxPerMm];
  for (const piece of painting.pieces) paintPiece(context, inks, painting, piece, at);
}

function paintPiece(
  context: CanvasRenderingContext2D,
  inks: Inks,
  { selected, isFaded, frame }: Painting,
  piece: Piece,
  at: (point: Flat) => Flat,
): void {
  const { of, face, lines, ring, disc } = piece;
  const isSelected = of === 'pin' && piece.index === selected;
  context.strokeStyle = isSelected || of === 'corridor' ? inks.moss : of === 'skin' ? inks.ink2 : inks.ink;
  context.fillStyle = isSelected ? inks.moss : fillOf(of, inks);
  context.setLineDash([...(DASHES[of] ?? [])]);
  context.lineWidth = DASHES[of] || of === 'corridor' ? THIN_PX : LINE_PX;
  if (disc) {
    const [x, y] = at(disc.centre);
    const [rx, ry] = [disc.radii[0] * frame.pxPerMm, disc.radii[1] * frame.pxPerMm];
    context.beginPath();
    context.ellipse(x, y, rx, ry, (disc.tiltDeg * Math.PI) / 180, 0, 2 * Math.PI);
    context.fill();
    context.stroke();
    return;
  }
  if (face.length > 0) {
    context.globalAlpha = of === 'bone' && isFaded ? FADED_ALPHA : of === 'corridor' ? BAND_ALPHA : 1;
    trace(context, face, at);
    context.fill();
    context.globalAlpha = 1;
  }
  for (const line of lines) stroke(context, line, at);
  if (ring.length === 0) return;
  context.globalAlpha = RING_ALPHA;
  context.lineWidth = THIN_PX;
  stroke(context, ring, at);
  context.globalAlpha = 1;
}

function fillOf(of: PieceOf, inks: Inks): string {
  if (of === 'bone') return inks.bone;
  return of === 'corridor' ? inks.mossw : inks.leaf;
}

function stroke(context: CanvasRenderingContext2D, line: readonly Flat[], at: (point: Flat) => Flat): void {
  trace(context, line, at);
  context.stroke();
}

function trace(context: CanvasRenderingContext2D, line: readonly Flat[], at: (point: Flat) => Flat): void {
  context.beginPath();
  for (const point of line) context.lineTo(...at(point));
}

/** Reads the theme's colours where that element stands. */
export function inksOf(element: Element): Inks {
  const style = getComputedStyle(element);
  const of = (name: string) => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: of('ink'),
    ink2: of('ink2'),
    leaf: of('leaf'),
    bone: of('bone'),
    moss: of('moss'),
    mossw: of('mossw'),
  };
}
