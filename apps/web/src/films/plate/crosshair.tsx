import type { Pixel } from '@bonewright/film';

/** Where the next mark goes when it is placed by keys: white with a dark edge, to be seen on any grey. */
export function Crosshair({ at: [x, y] }: { readonly at: Pixel }) {
  return (
    <svg
      className="plate-crosshair"
      width="41"
      height="41"
      style={{ left: x - 20.5, top: y - 20.5 }}
      aria-hidden="true"
    >
      <path d="M20.5 0V16M20.5 25V41M0 20.5H16M25 20.5H41" stroke="#0b0a08" strokeWidth="4" opacity="0.7" />
      <path d="M20.5 0V16M20.5 25V41M0 20.5H16M25 20.5H41" stroke="#ffffff" strokeWidth="1.5" />
    </svg>
  );
}
