/**
 * A plan drawn to scale in one view, as plain geometry for screen and paper alike.
 * Points are [s, w] in mm: s along the bone from its proximal end, w across it, medial (craniocaudal view) or
 * cranial (mediolateral view) positive, 0 on the straight line between the bone's ends.
 */
export type FigurePoint = readonly [sMm: number, wMm: number];
export type ViewName = 'craniocaudal' | 'mediolateral';

/** A round thing seen from the side: its centre line and thickness. */
export interface FigureRod {
  readonly line: readonly FigurePoint[];
  readonly diameterMm: number;
}

export interface FigureFragment {
  /** Outer walls, w low and w high side. */
  readonly outer: readonly [readonly FigurePoint[], readonly FigurePoint[]];
  /** Stretches of canal that were measured, each both sides. */
  readonly canal: readonly (readonly [readonly FigurePoint[], readonly FigurePoint[]])[];
}

export interface ViewFigure {
  readonly view: ViewName;
  readonly lengthMm: number;
  readonly fragments: readonly FigureFragment[];
  /** Stretches along s where no pin may go, with the reason. */
  readonly keepOuts: readonly { readonly fromMm: number; readonly toMm: number; readonly why: string }[];
  readonly skin: readonly (readonly FigurePoint[])[];
  readonly pins: readonly (FigureRod & { readonly sMm: number; readonly nearWall: FigurePoint })[];
  readonly columns: readonly (FigureRod & { readonly side: 'near' | 'far' })[];
  readonly im: (FigureRod & { readonly bend: readonly FigurePoint[] | null }) | null;
  readonly extent: { readonly s: readonly [number, number]; readonly w: readonly [number, number] };
}

/** The bone cut square to its axis at a pin. Points are [medial, cranial] in mm from the bone's axis. */
export interface SectionFigure {
  readonly pin: number;
  readonly sMm: number;
  /** [medial to lateral, cranial to caudal]. */
  readonly outerMm: readonly [number, number];
  readonly canalMm: readonly [number, number] | null;
  readonly pinDiameterMm: number;
  readonly aboutDeg: number;
  /** The IM pin pushed to the roomier side of the pin; null without one. */
  readonly im: {
    readonly centre: readonly [number, number];
    readonly diameterMm: number;
    readonly roomMm: number;
  } | null;
}
