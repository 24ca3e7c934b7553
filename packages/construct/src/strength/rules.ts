/** The check of strength that governs a margin: its name in the field's terms, its formula, and what it rests on. */
import type { Place } from './places.ts';

export type RuleName = Place['kind'] | 'buckling';

export interface Rule {
  readonly name: string;
  /** Stress on the left, what it is held against on the right. */
  readonly formula: string;
  readonly symbols: string;
  /** Evidence ids of what the formula itself takes. */
  readonly evidence: readonly string[];
}

/** Each rule as docs/theory/construct.md, "Strength", works it out. */
export const RULES: Readonly<Record<RuleName, Rule>> = {
  pin: {
    name: 'Von Mises yield of a round bar, or its fatigue',
    formula: '√((N/A + M c/I)² + 3 (T c/J)²) against yield, or the fatigue stress over the share of a step',
    symbols: 'N push, M bending and T twist in the pin; A, I, J, c of its shaft, in bone of its core',
    evidence: ['steel.saline-factor'],
  },
  im: {
    name: 'Von Mises yield of a round bar, or its fatigue',
    formula: '√((N/A + M c/I)² + 3 (T c/J)²) against yield, or the fatigue stress over the share of a step',
    symbols: 'N push, M bending and T twist in the IM pin; its bend bears what annealed wire does',
    evidence: ['steel.saline-factor', 'steel.annealed.yield'],
  },
  column: {
    name: 'Bending strength of the column, less the slot of its pin',
    formula: '√((N/A + M c/I)² + 3 (T c/J)²), I less d D³/12, against the column’s strength',
    symbols: 'D column, d pin through it; the working share of the strength for what comes at every step',
    evidence: ['column.working-share'],
  },
  hole: {
    name: 'Yield strain of bone at a pin hole',
    formula: 'K (N/A + M c/I), with 3 (K T c/J)² for twist, against E ε',
    symbols:
      'K the measured weakening by the hole, A, I, J of the whole ring, E modulus and ε yield strain of the bone',
    evidence: [
      'bone.yield-strain',
      'bone.hole.tenth',
      'bone.hole.fifth',
      'bone.hole.quarter',
      'bone.hole.neutral-weight',
    ],
  },
  bearing: {
    name: 'Bearing pressure of the pin on the wall',
    formula: 'V / (d t) against E ε',
    symbols: 'V force across the pin, d its core, t the wall, E modulus and ε yield strain of the bone',
    evidence: ['bone.yield-strain'],
  },
  slide: {
    name: 'Bond shear of the pin in its column',
    formula: 'N / (π d l) against the bond’s shear strength',
    symbols: 'N pull along the pin, d its diameter, l the length held in the column',
    evidence: ['column.bond-shear'],
  },
  buckling: {
    name: 'Buckling of two stiff pieces on a hinge',
    formula: 'share × K L / (a b) against the load',
    symbols: 'K the softer bending stiffness, L the bone, a and b from its ends to the fracture',
    evidence: ['interface.buckling.share'],
  },
};

/** The rule of the place that a margin names; where no place is named so, the frame buckles. */
export const ruleOf = (places: readonly Place[], weakest: string): RuleName =>
  places.find(({ words }) => words === weakest)?.kind ?? 'buckling';
