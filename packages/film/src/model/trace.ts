/** Requests and answers of calibration and trace. Pixels are [column, row]; the top left pixel's centre is [0, 0]. */

export type Pixel = readonly [number, number];

export type Calibration =
  | {
      readonly kind: 'ball';
      readonly diameterMm: number;
      readonly near: Pixel;
      readonly sourceToDetectorMm?: number | undefined;
      readonly ballToDetectorMm?: number | undefined;
      readonly objectToDetectorMm?: number | undefined;
    }
  | { readonly kind: 'scale'; readonly mmPerPixel: number; readonly sdPercent?: number | undefined }
  /** An implant of known diameter in the bone, one click on each of its edges, straight across. */
  | { readonly kind: 'implant'; readonly diameterMm: number; readonly across: readonly [Pixel, Pixel] }
  | {
      readonly kind: 'geometry';
      readonly sourceToDetectorMm: number;
      readonly objectToDetectorMm: number;
      readonly detectorPitchMm: number;
    };

export interface SegmentClicks {
  readonly name: string;
  readonly from: Pixel;
  readonly to: Pixel;
}

export interface TraceRequest {
  readonly calibration: Calibration;
  readonly segments: readonly SegmentClicks[];
}

/** A value with its standard deviation; null where the film does not say, and `why` says so. */
export interface Measured {
  readonly value: number | null;
  readonly sd: number | null;
  readonly why?: string;
}

export interface TraceStation {
  readonly sMm: number;
  readonly centre: Pixel;
  readonly outerMm: Measured;
  readonly canalMm: Measured;
  /** Where the walls lie on the film, for drawing: outer left and right of the axis, canal left and right. */
  readonly walls: {
    readonly outer: readonly [Pixel, Pixel] | null;
    readonly canal: readonly [Pixel, Pixel] | null;
  };
}

export interface TracedSegment {
  readonly name: string;
  readonly axis: { readonly from: Pixel; readonly to: Pixel };
  readonly stations: readonly TraceStation[];
  /** Stretches that could not be read and why, in words: `0.0 to 12.8 mm: no canal edge in the flared end`. */
  readonly notes: readonly string[];
}

export interface BallFit {
  readonly centre: Pixel;
  readonly shortAxisPx: number;
  readonly longAxisPx: number;
  readonly angleDeg: number;
}

export interface Trace {
  readonly mmPerPixel: Measured;
  /** The ball as found, for drawing; null for other kinds of calibration. */
  readonly ball: BallFit | null;
  /** What a ball 5 mm off in height does to every length, in per cent; null where it does not apply. */
  readonly ballHeightErrorPercent: number | null;
  readonly segments: readonly TracedSegment[];
  readonly angulationDeg: Measured;
  readonly translationMm: Measured;
}

/** Which side of the patient the film's +column direction shows. */
export type Towards = 'medial' | 'lateral' | 'cranial' | 'caudal';

/** One view ready to be joined with the other. */
export interface TracedView {
  readonly trace: Trace;
  readonly columnTowards: Towards;
  /** The fracture as a line across the bone, two clicks. */
  readonly fractureLine: readonly [Pixel, Pixel];
  /** Proximal and distal end of the bone; absent: the outer clicks. */
  readonly boneEnds?: readonly [Pixel, Pixel] | undefined;
}

/** Two views joined: the bone as it would be reduced, and how far from reduced it is. */
export interface JoinedBone {
  readonly lengthMm: Measured;
  /** As in the case file: pairs are [craniocaudal, mediolateral]. */
  readonly stations: readonly {
    readonly sMm: number;
    readonly outerMm: readonly [number, number];
    readonly canalMm: readonly [number, number] | null;
    readonly offsetMm: readonly [number, number];
    readonly sdMm: number;
  }[];
  readonly fracture: { readonly fromMm: number; readonly toMm: number; readonly obliquityDeg: number };
  readonly angulationDeg: { readonly craniocaudal: Measured; readonly mediolateral: Measured; readonly true: Measured };
  readonly planeFromCraniocaudalDeg: Measured;
  readonly translationMm: Measured;
  readonly narrowestCanalMm: (Measured & { readonly sMm: number; readonly view: string }) | null;
  readonly warnings: readonly string[];
}
