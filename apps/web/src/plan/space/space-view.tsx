/** The construct in space as a line drawing: drag or arrow keys turn it, the wheel, plus and minus zoom. */
import './space.css';
import { type Case, directionWords } from '@bonewright/construct';
import { memo, type RefObject, useEffect, useId, useMemo, useRef, useState } from 'react';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { type Eye, eyeAboutDeg } from '../../drawing/geometry/space/eye.ts';
import { spacePieces } from '../../drawing/geometry/space/pieces.ts';
import { useSize } from '../../drawing/use-size.ts';
import { useDrag } from '../ruler/use-drag.ts';
import { frameOf } from './frame.ts';
import { paint } from './paint.ts';
import { spaceSays } from './says.ts';
import { useInks } from './use-inks.ts';
import { keyed, START, turned, type View, ZOOM_STEP, zoomed } from './view-keys.ts';

interface SpaceViewProps {
  readonly patientCase: Case;
  readonly placement: Placement;
  readonly selected: number;
}

const DEG_PER_PX = 0.6;
/** A notch of the wheel is about a hundred of its units. */
const ZOOM_PER_WHEEL = 0.0018;

export const SpaceView = memo(({ patientCase, placement, selected }: SpaceViewProps) => {
  const [view, setView] = useState(START);
  const { turnDeg, leanDeg } = view.eye;
  const eye = useMemo(() => ({ turnDeg: turnDeg + placement.aboutDeg, leanDeg }), [turnDeg, leanDeg, placement]);
  const saysId = useId();
  return (
    <section className="planner-space" aria-labelledby="space-title">
      <header className="side-head">
        <h2 id="space-title">In space</h2>
      </header>
      <div className="space">
        <Drawing {...{ patientCase, placement, selected, view, setView, eye, saysId }} />
        <p className="sr-only" id={saysId}>
          {spaceSays(patientCase, placement)}
        </p>
        <p className="space-from quiet">{`from ${directionWords(Math.round(eyeAboutDeg(eye)))}`}</p>
        <Buttons view={view} setView={setView} canShowSkin={Boolean(patientCase.softTissueMm?.length)} />
      </div>
    </section>
  );
});

type SetView = (change: (now: View) => View) => void;

interface DrawingProps extends SpaceViewProps {
  readonly view: View;
  readonly setView: SetView;
  /** Turned with the plane of the frame. */
  readonly eye: Eye;
  readonly saysId: string;
}

function Drawing({ patientCase, placement, selected, view, setView, eye, saysId }: DrawingProps) {
  const { zoom, isFaded, hasSkin } = view;
  const [box, size] = useSize<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const inks = useInks(canvas);
  const pieces = useMemo(
    () => spacePieces(patientCase, placement, eye, { inside: isFaded, skin: hasSkin }),
    [patientCase, placement, eye, isFaded, hasSkin],
  );
  useEffect(() => {
    if (!canvas.current || !inks || size.width === 0) return;
    paint(canvas.current, inks, {
      pieces,
      frame: frameOf(pieces, patientCase.bone.lengthMm, zoom, size),
      selected,
      isFaded,
    });
  }, [inks, pieces, patientCase, zoom, size, selected, isFaded]);
  useWheel(canvas, setView);
  const drag = useDrag(
    () => view.eye,
    (from, right, down) => setView((now) => turned(now, from, right * DEG_PER_PX, down * DEG_PER_PX)),
  );
  return (
    <div
      {...drag}
      ref={box}
      className="space-box"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it turns by keys, as its role says
      tabIndex={0}
      aria-roledescription="drawing that turns"
      aria-label={`The plan in space, seen from ${directionWords(Math.round(eyeAboutDeg(eye)))}, leaned ${Math.round(view.eye.leanDeg)} degrees. Arrow keys turn, plus and minus zoom, F fades the bone, S shows the skin, Home turns back.`}
      aria-describedby={saysId}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        const next = keyed(view, event.key);
        if (!next) return;
        event.preventDefault();
        setView(() => next);
      }}
    >
      <canvas ref={canvas} className="space-drawing" />
    </div>
  );
}

/** React listens to the wheel without the right to hold the page still. */
function useWheel(canvas: RefObject<HTMLCanvasElement | null>, setView: SetView): void {
  useEffect(() => {
    const { current } = canvas;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      setView((now) => zoomed(now, Math.exp(-event.deltaY * ZOOM_PER_WHEEL)));
    };
    current?.addEventListener('wheel', turn, { passive: false });
    return () => current?.removeEventListener('wheel', turn);
  }, [canvas, setView]);
}

interface ButtonsProps {
  readonly view: View;
  readonly setView: SetView;
  readonly canShowSkin: boolean;
}

function Buttons({ view: { isFaded, hasSkin }, setView, canShowSkin }: ButtonsProps) {
  return (
    <div className="space-buttons">
      <button
        type="button"
        className="button-small"
        aria-pressed={isFaded}
        onClick={() => setView((now) => ({ ...now, isFaded: !isFaded }))}
      >
        Fade bone
      </button>
      {canShowSkin && (
        <button
          type="button"
          className="button-small"
          aria-pressed={hasSkin}
          onClick={() => setView((now) => ({ ...now, hasSkin: !hasSkin }))}
        >
          Skin
        </button>
      )}
      <button type="button" className="button-small" onClick={() => setView((now) => zoomed(now, 1 / ZOOM_STEP))}>
        −<span className="sr-only"> smaller</span>
      </button>
      <button type="button" className="button-small" onClick={() => setView((now) => zoomed(now, ZOOM_STEP))}>
        +<span className="sr-only"> larger</span>
      </button>
      <button
        type="button"
        className="button-small"
        onClick={() => setView((now) => ({ ...now, eye: START.eye, zoom: START.zoom }))}
      >
        Back
      </button>
    </div>
  );
}
