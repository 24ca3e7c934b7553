/** What a ray may meet: balls, rods, boxes, and tubes of elliptical section along a curved axis. All mm. */
import { dot, type Frame3, length, minus, plus, toLocal, type Vector } from './vector.ts';

/** A ray from the source: points are origin + t * direction. */
export interface Ray {
  readonly origin: Vector;
  readonly direction: Vector;
}

/** Attenuation of the beam along a ray, and a ball about the solid so that most rays need not ask. */
export interface Solid {
  /** Integral of attenuation along the ray. */
  through(ray: Ray): number;
  /** Points whose shadows hold the solid's shadow, each with a radius. */
  readonly hull: readonly { readonly at: Vector; readonly radius: number }[];
  /** Without edges worth sampling within a pixel (soft tissue). */
  readonly isSmooth?: boolean;
}

export function ball(centre: Vector, radiusMm: number, attenuation: number): Solid {
  return {
    hull: [{ at: centre, radius: radiusMm }],
    through: ({ origin, direction }) => {
      const o = minus(origin, centre);
      const a = dot(direction, direction);
      const b = dot(o, direction);
      const c = dot(o, o) - radiusMm * radiusMm;
      const d = b * b - a * c;
      return d <= 0 ? 0 : (2 * attenuation * Math.sqrt(d)) / Math.sqrt(a);
    },
  };
}

/** A round rod between two points. */
export function rod(from: Vector, to: Vector, diameterMm: number, attenuation: number): Solid {
  const axis = minus(to, from);
  const long = length(axis);
  const u: Vector = [axis[0] / long, axis[1] / long, axis[2] / long];
  const r = diameterMm / 2;
  return {
    hull: [
      { at: from, radius: r },
      { at: to, radius: r },
    ],
    through: ({ origin, direction }) => {
      const o = minus(origin, from);
      const du = dot(direction, u);
      const ou = dot(o, u);
      const dx = plus(direction, u, -du);
      const ox = plus(o, u, -ou);
      const a = dot(dx, dx);
      const b = dot(ox, dx);
      const c = dot(ox, ox) - r * r;
      const d = b * b - a * c;
      if (d <= 0 || a === 0) return 0;
      const root = Math.sqrt(d);
      const [t0, t1] = clipped((-b - root) / a, (-b + root) / a, ou, du, long);
      return Math.max(0, t1 - t0) * length(direction) * attenuation;
    },
  };
}

/** The part of [t0, t1] where 0 <= o + t d <= size. */
function clipped(t0: number, t1: number, o: number, d: number, size: number): [number, number] {
  if (Math.abs(d) < 1e-12) return o < 0 || o > size ? [0, 0] : [t0, t1];
  const p = -o / d;
  const q = (size - o) / d;
  return [Math.max(t0, Math.min(p, q)), Math.min(t1, Math.max(p, q))];
}

/** A box with its corner at the frame's origin. */
export function box(frame: Frame3, size: Vector, attenuation: number): Solid {
  const corners = [0, 1].flatMap((i) =>
    [0, 1].flatMap((j) => [0, 1].map((k) => [i * size[0], j * size[1], k * size[2]] as const)),
  );
  return {
    hull: corners.map((c) => ({
      at: plus(plus(plus(frame.origin, frame.x, c[0]), frame.y, c[1]), frame.z, c[2]),
      radius: 0,
    })),
    through: ({ origin, direction }) => {
      const o = toLocal(frame, origin);
      const d: Vector = [dot(direction, frame.x), dot(direction, frame.y), dot(direction, frame.z)];
      let t0 = Number.NEGATIVE_INFINITY;
      let t1 = Number.POSITIVE_INFINITY;
      for (let k = 0; k < 3; k++) [t0, t1] = clipped(t0, t1, o[k]!, d[k]!, size[k]!);
      return Math.max(0, t1 - t0) * length(direction) * attenuation;
    },
  };
}
