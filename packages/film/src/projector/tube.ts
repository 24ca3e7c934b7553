/**
 * A bone fragment (or a limb's soft tissue): elliptical sections square to a local z, centre and sizes as functions of z,
 * with a canal, a fracture face and spongy ends. The ray's two crossings are found exactly, each at its own z.
 */
import type { Ray, Solid } from './solids.ts';
import { dot, type Frame3, length, toLocal, toWorld, type Vector } from './vector.ts';

/** Section at z: centre and half axes of an ellipse turned by a fixed angle. */
export interface Section {
  readonly cx: number;
  readonly cy: number;
  readonly a: number;
  readonly b: number;
}

export interface TubeShape {
  readonly frame: Frame3;
  /** Turn of all sections about z, radians. */
  readonly turn: number;
  readonly fromZ: number;
  readonly toZ: number;
  outer(z: number): Section;
  /** Absent: solid. */
  readonly canal?: (z: number) => Section;
  readonly attenuation: number;
  /** Soft tissue: no edge worth sampling within a pixel. */
  readonly isSmooth?: boolean;
  /** Share of the canal's emptiness that spongy bone takes away at z and across; absent: none. */
  readonly spongy?: (z: number, x: number) => number;
  /** Fracture face: material where side * (z - at - slopeX x - slopeY y - jag(x)) < 0. */
  readonly face?: {
    readonly side: 1 | -1;
    readonly at: number;
    readonly slopeX: number;
    readonly slopeY: number;
    jag(x: number): number;
  };
}

/** Sections by table, so that a ray costs no sines. */
class Table {
  private readonly values: Float64Array;
  private readonly from: number;
  private readonly step: number;
  private readonly last: number;

  constructor(shape: TubeShape, section: (z: number) => Section) {
    this.step = Math.max(0.02, (shape.toZ - shape.fromZ) / 2000);
    this.from = shape.fromZ;
    this.last = Math.ceil((shape.toZ - shape.fromZ) / this.step) + 1;
    this.values = new Float64Array(4 * (this.last + 1));
    for (let i = 0; i <= this.last; i++) {
      const s = section(this.from + i * this.step);
      this.values.set([s.cx, s.cy, s.a, s.b], 4 * i);
    }
  }

  /** Writes cx, cy, a, b at z into `out`; the end's section beyond the ends. */
  at(z: number, out: Float64Array): void {
    const t = Math.min(this.last - 1e-9, Math.max(0, (z - this.from) / this.step));
    const i = Math.floor(t);
    const u = t - i;
    for (let k = 0; k < 4; k++) out[k] = this.values[4 * i + k]! * (1 - u) + this.values[4 * i + 4 + k]! * u;
  }
}

/** A tube as a solid, with the silhouette that its truth is read from. */
export interface Tube extends Solid {
  readonly shape: TubeShape;
  /** As `through`, without the fracture face. */
  throughWhole(ray: Ray): number;
  /** Above zero where the ray meets the outer (or canal) surface, taken without face and ends; zero where it touches. */
  grazes(ray: Ray, surface: 'outer' | 'canal'): number;
}

export function tube(shape: TubeShape): Tube {
  const outer = new Table(shape, shape.outer);
  const canal = shape.canal ? new Table(shape, shape.canal) : null;
  const cos = Math.cos(shape.turn);
  const sin = Math.sin(shape.turn);
  const local = new LocalRay(shape, cos, sin);
  const run = (ray: Ray, withFace: boolean): number => {
    local.set(ray);
    const o = local.crossings(outer);
    if (!o) return 0;
    let [o0, o1] = o;
    [o0, o1] = local.within(o0, o1, withFace);
    if (o1 <= o0) return 0;
    let path = o1 - o0;
    const c = canal ? local.crossings(canal) : null;
    if (c) {
      const [c0, c1] = local.within(Math.max(o0, c[0]), Math.min(o1, c[1]), withFace);
      if (c1 > c0) {
        const t = (c0 + c1) / 2;
        path -= (c1 - c0) * (1 - (shape.spongy?.(local.zAt(t), local.acrossAt(t)) ?? 0));
      }
    }
    return path * local.scale * shape.attenuation;
  };
  return {
    shape,
    hull: hullOf(shape),
    isSmooth: shape.isSmooth ?? false,
    through: (ray) => run(ray, true),
    throughWhole: (ray) => run(ray, false),
    grazes: (ray, surface) => {
      local.set(ray);
      return local.discriminant(surface === 'outer' ? outer : (canal ?? outer));
    },
  };
}

function hullOf(shape: TubeShape): Solid['hull'] {
  const n = 24;
  return Array.from({ length: n + 1 }, (_, i) => {
    const z = shape.fromZ + ((shape.toZ - shape.fromZ) * i) / n;
    const s = shape.outer(z);
    const c = Math.cos(shape.turn);
    const q = Math.sin(shape.turn);
    // the section's centre is given in its own turned axes
    const at: Vector = [c * s.cx - q * s.cy, q * s.cx + c * s.cy, z];
    return { at: toWorld(shape.frame, at), radius: Math.max(s.a, s.b) + (shape.toZ - shape.fromZ) / n };
  });
}

/** One ray in the tube's own axes, its sections' turn taken out. */
class LocalRay {
  scale = 1;
  private qa = 1;
  private qb = 0;
  private qc = 0;
  private readonly o = new Float64Array(3);
  private readonly d = new Float64Array(3);
  private readonly s = new Float64Array(4);
  private readonly shape: TubeShape;
  private readonly cos: number;
  private readonly sin: number;

  constructor(shape: TubeShape, cos: number, sin: number) {
    this.shape = shape;
    this.cos = cos;
    this.sin = sin;
  }

  set(ray: Ray): void {
    const { frame } = this.shape;
    const p = toLocal(frame, ray.origin);
    const v = ray.direction;
    const dx = dot(v, frame.x);
    const dy = dot(v, frame.y);
    this.o[0] = this.cos * p[0] + this.sin * p[1];
    this.o[1] = this.cos * p[1] - this.sin * p[0];
    this.o[2] = p[2];
    this.d[0] = this.cos * dx + this.sin * dy;
    this.d[1] = this.cos * dy - this.sin * dx;
    this.d[2] = dot(v, frame.z);
    this.scale = length(v);
  }

  zAt(t: number): number {
    return this.o[2]! + t * this.d[2]!;
  }

  /** Distance across the tube as the ray sees it. */
  acrossAt(t: number): number {
    const x = this.o[0]! + t * this.d[0]!;
    const y = this.o[1]! + t * this.d[1]!;
    const n = Math.hypot(this.d[0]!, this.d[1]!) || 1;
    return (x * this.d[1]! - y * this.d[0]!) / n;
  }

  /** Coefficients of |(p - c) / (a, b)|^2 - 1 along the ray, with the section at z. */
  private quadratic(table: Table, z: number): void {
    table.at(z, this.s);
    const a = this.s[2]!;
    const b = this.s[3]!;
    const ox = (this.o[0]! - this.s[0]!) / a;
    const oy = (this.o[1]! - this.s[1]!) / b;
    const dx = this.d[0]! / a;
    const dy = this.d[1]! / b;
    this.qa = dx * dx + dy * dy;
    this.qb = ox * dx + oy * dy;
    this.qc = ox * ox + oy * oy - 1;
  }

  private start(): number {
    const dd = this.d[0]! ** 2 + this.d[1]! ** 2;
    return dd > 0 ? -(this.o[0]! * this.d[0]! + this.o[1]! * this.d[1]!) / dd : 0;
  }

  crossings(table: Table): [number, number] | null {
    let z = this.zAt(this.start());
    for (let k = 0; k < 2; k++) {
      this.quadratic(table, z);
      z = this.zAt(-this.qb / this.qa);
    }
    this.quadratic(table, z);
    const { qa, qb } = this;
    const root = qb * qb - qa * this.qc;
    if (root <= 0) return null;
    const half = Math.sqrt(root);
    return [this.refined(table, (-qb - half) / qa, -1), this.refined(table, (-qb + half) / qa, 1)];
  }

  private refined(table: Table, t: number, side: 1 | -1): number {
    let at = t;
    for (let k = 0; k < 2; k++) {
      this.quadratic(table, this.zAt(at));
      at = (-this.qb + side * Math.sqrt(Math.max(0, this.qb * this.qb - this.qa * this.qc))) / this.qa;
    }
    return at;
  }

  discriminant(table: Table): number {
    let z = this.zAt(this.start());
    for (let k = 0; k < 4; k++) {
      this.quadratic(table, z);
      z = this.zAt(-this.qb / this.qa);
    }
    this.quadratic(table, z);
    return (this.qb * this.qb) / this.qa - this.qc;
  }

  /** The part of [t0, t1] inside the tube's ends and on the fragment's side of its fracture face. */
  within(t0: number, t1: number, withFace: boolean): [number, number] {
    const { shape } = this;
    let [a, b] = halfSpace(t0, t1, this.o[2]! - shape.fromZ, this.d[2]!);
    [a, b] = halfSpace(a, b, shape.toZ - this.o[2]!, -this.d[2]!);
    const f = shape.face;
    if (f && withFace && b > a) {
      // the face's slopes in the sections' turned axes
      const sx = f.slopeX * this.cos + f.slopeY * this.sin;
      const sy = f.slopeY * this.cos - f.slopeX * this.sin;
      const o = this.o[2]! - f.at - f.jag(this.acrossAt((a + b) / 2)) - sx * this.o[0]! - sy * this.o[1]!;
      const d = this.d[2]! - sx * this.d[0]! - sy * this.d[1]!;
      [a, b] = halfSpace(a, b, -f.side * o, -f.side * d);
    }
    return [a, b];
  }
}

/** The part of [t0, t1] where o + t d >= 0. */
function halfSpace(t0: number, t1: number, o: number, d: number): [number, number] {
  if (Math.abs(d) < 1e-15) return o >= 0 ? [t0, t1] : [t0, t0];
  const t = -o / d;
  return d > 0 ? [Math.max(t0, t), t1] : [t0, Math.min(t1, t)];
}
