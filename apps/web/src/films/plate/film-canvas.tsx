/** The film itself: one bitmap, drawn through the viewport; single pixels stay square when seen near. */
import { useLayoutEffect, useRef } from 'react';
import type { Size } from '../../drawing/use-size.ts';
import { screenPlace, type Viewport } from './viewport.ts';

interface FilmCanvasProps {
  /** Of the whole film, perhaps with fewer pixels than it has. */
  readonly picture: ImageBitmap | null;
  readonly film: { readonly cols: number; readonly rows: number };
  readonly view: Viewport;
  readonly plate: Size;
}

const SMOOTH_BELOW = 3;

export function FilmCanvas({ picture, film, view, plate }: FilmCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const { current } = canvas;
    const context = current?.getContext('2d', { alpha: false });
    if (!current || !context) return;
    const density = devicePixelRatio;
    const [width, height] = [Math.round(plate.width * density), Math.round(plate.height * density)];
    if (current.width !== width || current.height !== height) {
      current.width = width;
      current.height = height;
    }
    context.setTransform(density, 0, 0, density, 0, 0);
    context.fillStyle = '#0b0a08';
    context.fillRect(0, 0, plate.width, plate.height);
    if (!picture) return;
    const [left, top] = screenPlace(view, plate, [-0.5, -0.5]);
    context.imageSmoothingEnabled = view.scale < SMOOTH_BELOW;
    context.imageSmoothingQuality = 'high';
    context.drawImage(picture, left, top, film.cols * view.scale, film.rows * view.scale);
  }, [picture, film, view, plate]);
  return <canvas ref={canvas} />;
}
