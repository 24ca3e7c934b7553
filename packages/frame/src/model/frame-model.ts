/** A 3-D frame as data, in mm, N, MPa. Axes and signs: docs/theory/frame.md. */

export type Vec3 = readonly [number, number, number];
export type Vec6 = readonly [number, number, number, number, number, number];
export type Freedom = 'x' | 'y' | 'z' | 'rx' | 'ry' | 'rz';

export type Section =
  | { readonly shape: 'round'; readonly od: number }
  | { readonly shape: 'tube'; readonly od: number; readonly id: number }
  | {
      readonly shape: 'ovalTube';
      readonly odY: number;
      readonly odZ: number;
      readonly idY: number;
      readonly idZ: number;
    }
  | {
      readonly shape: 'properties';
      readonly A: number;
      readonly Iy: number;
      readonly Iz: number;
      readonly J: number;
    };

export interface Member {
  readonly from: string;
  readonly to: string;
  readonly section: string;
  readonly material: string;
  readonly yAxis?: Vec3 | undefined;
}

export interface FrameModel {
  readonly title?: string | undefined;
  readonly source?: string | undefined;
  readonly beam: 'euler' | 'timoshenko';
  readonly buckling: boolean;
  readonly nodes: Readonly<Record<string, Vec3>>;
  readonly materials: Readonly<Record<string, { readonly E: number; readonly nu: number }>>;
  readonly sections: Readonly<Record<string, Section>>;
  readonly members: Readonly<Record<string, Member>>;
  readonly rigids: Readonly<Record<string, { readonly from: string; readonly to: string }>>;
  /** `to` null is the ground. */
  readonly springs: Readonly<Record<string, { readonly from: string; readonly to: string | null; readonly k: Vec6 }>>;
  readonly contacts: Readonly<
    Record<
      string,
      { readonly from: string; readonly to: string; readonly normal: Vec3; readonly gapMm: number; readonly k: number }
    >
  >;
  readonly sleeves: Readonly<
    Record<
      string,
      {
        readonly inner: string;
        readonly outer: string;
        readonly axis: Vec3;
        readonly clearanceMm: number;
        readonly k: number;
      }
    >
  >;
  readonly supports: Readonly<Record<string, readonly Freedom[]>>;
  readonly loads: Readonly<Record<string, Readonly<Record<string, Vec6>>>>;
}

export interface LoadResult {
  readonly displacements: Readonly<Record<string, Vec6>>;
  readonly reactions: Readonly<Record<string, Vec6>>;
  readonly members: Readonly<
    Record<string, { readonly from: Vec6; readonly to: Vec6; readonly peakStressMPa: number | null }>
  >;
  readonly contacts: Readonly<Record<string, { readonly openingMm: number; readonly forceN: number }>>;
  readonly sleeves: Readonly<Record<string, { readonly offsetMm: number; readonly forceN: number }>>;
  /** Present when the model asks for buckling; null where nothing can buckle. */
  readonly criticalFactor?: number | null;
}

export interface FrameResult {
  readonly loads: Readonly<Record<string, LoadResult>>;
}
