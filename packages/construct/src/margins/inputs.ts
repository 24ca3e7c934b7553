/**
 * What may be off in a construct's figures. Figures that the user measured move by their own spread; those that were
 * typed in place of the registry's do not move.
 */
import { value } from '@bonewright/evidence';
import { classOf } from '../loads/species.ts';
import type { Case, Construct } from '../model/case-file.ts';
import type { Draft } from './draft.ts';
import { type Input, offBy, scaledBy } from './input.ts';
import { columnInputs, metalInputs, pinInputs } from './part-inputs.ts';
import { factorOf } from './spread.ts';

/** Every input of this construct, in a fixed order. */
export function inputsOf(patientCase: Case, construct: Construct): Input[] {
  return [
    ...loadInputs(patientCase),
    ...boneInputs(patientCase),
    ...gripInputs(construct),
    ...metalInputs(patientCase, construct),
    ...columnInputs(patientCase, construct),
    ...pinInputs(construct),
  ];
}

function loadInputs({ loads = {} }: Case): Input[] {
  const demand = (words: string, key: 'axialN' | 'bendingNmm' | 'torsionNmm', id: string): Input[] => {
    const input = scaledBy(words, id, (f, factor) => {
      f.demand = { ...f.demand, [key]: f.demand[key] * factor };
    });
    return loads[key] === undefined ? [input] : [];
  };
  return [
    ...demand('misstep load along the bone', 'axialN', 'loads.misstep.axial'),
    ...demand('bending load', 'bendingNmm', 'loads.misstep.bending'),
    ...demand('twisting load', 'torsionNmm', 'loads.torsion.share'),
  ];
}

function boneInputs(patientCase: Case): Input[] {
  const modulus = scaledBy('stiffness of the bone', `bone.${classOf(patientCase)}.young`, (f, factor) => {
    f.boneYoungMPa *= factor;
  });
  return [
    ...(patientCase.bone.youngMPa === undefined ? [modulus] : []),
    scaledBy('yield strain of the bone', 'bone.yield-strain', (f, factor) => {
      f.boneYieldStrain *= factor;
    }),
    {
      words: 'weakening by the holes',
      evidence: 'bone.hole.fifth',
      move: ({ figures }, z) => {
        figures.holeShare *= holeSpread(z);
      },
    },
    read('width of the bone', (draft, z) => {
      draft.outerZ += z;
    }),
    canal('canal width in the proximal fragment', 'proximal'),
    canal('canal width at the fracture', 'fracture'),
    canal('canal width in the distal fragment', 'distal'),
    offBy('fracture gap', 'interface.fracture.gap-sd', (f, offMm) => {
      f.gapMm = Math.max(0, f.gapMm + offMm);
    }),
  ];
}

/** A reading off the films: its spread stands in the case. */
const read = (words: string, move: Input['move']): Input => ({ words, evidence: null, move });

const canal = (words: string, place: keyof Draft['canalZ']): Input =>
  read(words, (draft, z) => {
    draft.canalZ[place] += z;
  });

/** Spread of what a hole takes beyond 1, from the middle of the measured range. */
function holeSpread(z: number): number {
  const middle = value('bone.hole.fifth');
  return Math.max(0, (middle * factorOf('bone.hole.fifth', z) - 1) / (middle - 1));
}

function gripInputs(construct: Construct): Input[] {
  if (construct.grip === 'bonded') return [];
  return [
    scaledBy('grip of pins in bone and putty', 'interface.knock-down', (f, factor) => {
      f.slack = Math.max(value('interface.smallest-slack'), (1 + f.slack) * factor - 1);
    }),
    scaledBy('slip of pins out of the column', 'column.bond-shear', (f, factor) => {
      f.bondShearMPa *= factor;
    }),
  ];
}
