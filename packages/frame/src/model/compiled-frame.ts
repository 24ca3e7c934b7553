/**
 * A frame made ready for solving many times: names became indices, the elimination order is fixed, and every figure
 * that a sample or a dragged pin may change is a number in a typed array. Nothing is allocated by `solve`.
 */
import type { FrameModel } from './frame-model.ts';

export type Supports = FrameModel['supports'];

export interface CompileOptions {
  /** Sets of supports by name, instead of the model's own. */
  readonly supportSets?: Readonly<Record<string, Supports>> | undefined;
  /** Load case -> the support set under it. A load case that is not named here takes the first set. */
  readonly supportSetOf?: Readonly<Record<string, string>> | undefined;
  /** `typescript` is the readable reference, `wasm` the fast one (default). Both give the same bits. */
  readonly kernel?: 'wasm' | 'typescript' | undefined;
}

/** What may be rewritten between solves; the units are mm, N, MPa. Filled from the model by `compileFrame`. */
export interface FrameInputs {
  /** 3 a node. */
  readonly nodesMm: Float64Array;
  /** One a member each. Second moments are about the member's own y and z. */
  readonly youngMPa: Float64Array;
  readonly shearModulusMPa: Float64Array;
  readonly areaMm2: Float64Array;
  readonly iyMm4: Float64Array;
  readonly izMm4: Float64Array;
  readonly jMm4: Float64Array;
  /** Shear area over area; 0 leaves shear out (Bernoulli). */
  readonly shearCoefficient: Float64Array;
  /** 6 a spring: N/mm along, N·mm/rad about the global axes. */
  readonly springK: Float64Array;
  /** One a contact. */
  readonly contactGapMm: Float64Array;
  readonly contactK: Float64Array;
  /** 3 a contact, any length. */
  readonly contactNormal: Float64Array;
  /** One a sleeve. */
  readonly sleeveClearanceMm: Float64Array;
  readonly sleeveK: Float64Array;
  /** 3 a sleeve, any length. */
  readonly sleeveAxis: Float64Array;
  /** 6 a node, load case after load case: index (load * nodes + node) * 6. */
  readonly loads: Float64Array;
}

/** What `solve` wrote last; index (load * count + item) * width. */
export interface FrameOutputs {
  /** 6 a node: mm and rad, global axes. */
  readonly displacements: Float64Array;
  /** 12 a member: N Vy Vz T My Mz on its `from` end, then on its `to` end, local axes. */
  readonly memberEnds: Float64Array;
  /** One a contact: opening in mm (below zero: overlap) and force in N. */
  readonly contactOpeningMm: Float64Array;
  readonly contactForceN: Float64Array;
  /** One a sleeve: distance off the middle in mm and force in N. */
  readonly sleeveOffsetMm: Float64Array;
  readonly sleeveForceN: Float64Array;
}

export interface CompiledFrame {
  /** Names in the order of the arrays. */
  readonly nodes: readonly string[];
  readonly members: readonly string[];
  readonly springs: readonly string[];
  readonly contacts: readonly string[];
  readonly sleeves: readonly string[];
  readonly loads: readonly string[];
  readonly inputs: FrameInputs;
  readonly outputs: FrameOutputs;
  /** Multiply-adds of one solve as the plan has them (assembly, elimination, substitution): for measuring speed. */
  readonly multiplyAdds: number;
  /**
   * Solves every load case for the present `inputs` and rewrites `outputs`.
   * Throws InputError where the frame can move freely, or a member has lost its length.
   */
  solve(): void;
}
