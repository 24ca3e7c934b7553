/** The film itself: what is painted of it, drawn through the viewport; single pixels stay square when seen near. */
import { useLayoutEffect, useRef } from 'react';
import type { Size } from '../../drawing/use-size.ts';
import type { Picture } from './use-picture.ts';
import { matrixIn, type Viewport } from './viewport.ts';

interface FilmCanvasProps {
  readonly picture: Picture | null;
  readonly view: Viewport;
  readonly plate: Size;
}

const SMOOTH_BELOW = 3;

export function FilmCanvas({ picture, view, plate }: FilmCanvasProps) {
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
    const { left, top, right, bottom } = picture.shows;
    context.transform(...matrixIn(view, plate));
    context.imageSmoothingEnabled = view.scale < SMOOTH_BELOW;
    // Half a pixel: the centres of pixels are whole numbers.
    context.drawImage(picture.bitmap, left - 0.5, top - 0.5, right - left, bottom - top);
  }, [picture, view, plate]);
  return <canvas ref={canvas} />;
}
