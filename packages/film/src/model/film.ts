/** A decoded film: stored values as they lie in the file, never inverted or windowed. */

export interface Spacing {
  readonly rowMm: number;
  readonly colMm: number;
  /** detector: no magnification taken out; patient: calibrated by whoever wrote the file. */
  readonly plane: 'detector' | 'patient' | 'unknown';
  readonly basis: string;
}

/** A table that grey values go through; input below `first` takes the first entry, past its end the last. */
export interface LookupTable {
  readonly name: string;
  readonly first: number;
  /** Significant bits of an entry. */
  readonly bits: number;
  readonly values: Uint16Array;
}

export interface Film {
  readonly format: 'dicom' | 'png' | 'tiff' | 'jpeg';
  readonly rows: number;
  readonly cols: number;
  readonly frames: number;
  readonly samplesPerPixel: number;
  readonly bitsAllocated: number;
  readonly bitsStored: number;
  readonly pixelRepresentation: 0 | 1;
  readonly photometric: string;
  readonly transferSyntax: string | null;
  readonly min: number;
  readonly max: number;
  readonly spacing: Spacing | null;
  /** Row by row, samples interleaved, all frames. */
  readonly pixels: Uint8Array | Int8Array | Uint16Array | Int16Array;
  /** Rescale, windows, intensity relationship: null where the file says nothing. */
  readonly grey: {
    readonly slope: number;
    readonly intercept: number;
    readonly windows: readonly { readonly centre: number; readonly width: number; readonly name: string }[];
    readonly voiFunction: 'LINEAR' | 'LINEAR_EXACT' | 'SIGMOID';
    /** -1: higher value, less beam. +1: lower value, less beam. */
    readonly intensitySign: 1 | -1 | null;
    readonly intensityRelationship: 'LIN' | 'LOG' | null;
    /** Stands in for slope and intercept. */
    readonly modalityTable?: LookupTable;
    /** Alternatives to the windows. */
    readonly voiTables?: readonly LookupTable[];
    /** The file asks for white and black to be swapped; with MONOCHROME1 it is the same one swap. */
    readonly presentationInverse?: boolean;
    /** Stored value of the surround that was never exposed. */
    readonly padding?: number;
  };
  /** What the header says of patient, owner, view and time, for the user to confirm. */
  readonly header: Readonly<Record<string, string>>;
  readonly warnings: readonly string[];
}

/** What `traceFilm` reads of a film: one frame of single-sample values. */
export interface GreyImage {
  readonly rows: number;
  readonly cols: number;
  readonly pixels: Uint8Array | Int8Array | Uint16Array | Int16Array | Float32Array;
  readonly photometric: string;
  readonly grey?: Film['grey'];
  /** Where known: a linear detector's full scale is 2^bitsStored - 1. */
  readonly bitsStored?: number;
}
