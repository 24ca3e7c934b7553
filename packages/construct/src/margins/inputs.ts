/**
 * What may be off in a construct's figures, each input by its name in words and by how it moves them when drawn `z`
 * standard deviations from its middle. Figures that the user measured or typed move by their own spread, or not at all.
 */
import { value } from '@bonewright/evidence';
import { classOf } from '../loads/species.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf, type Figures, found, type RodFigures } from '../model/figures.ts';
import { materialOf } from '../model/materials.ts';
import { pinName } from '../to-frame/pin-part.ts';
import type { Draft } from './draft.ts';
import { factorOf } from './spread.ts';

export interface Input {
  readonly words: string;
  /** Moves the figures of a draft. */
  readonly move: (draft: Draft, z: number) => void;
}

/** Every input of this construct, in a fixed order. */
export function inputsOf(patientCase: Case, construct: Construct): Input[] {
  return [
    ...loadInputs(patientCase),
    ...boneInputs(patientCase),
    ...gripInputs(construct),
    ...metalInputs(patientCase, construct),
    ...columnInputs(patientCase, construct),
    ...construct.pins.map((_, i) => ({
      words: `free length of ${pinName(i)}`,
      move: ({ figures: f }: Draft, z: number) => {
        f.pins[i]!.freeByMm += z * value('column.free-length-sd');
      },
    })),
  ];
}

function loadInputs({ loads = {} }: Case): Input[] {
  const demand = (words: string, key: 'axialN' | 'bendingNmm' | 'torsionNmm', id: string, typed: boolean): Input[] => {
    const move = ({ figures: f }: Draft, z: number) => {
      f.demand = { ...f.demand, [key]: f.demand[key] * factorOf(id, z) };
    };
    return typed ? [] : [{ words, move }];
  };
  return [
    ...demand('misstep load along the bone', 'axialN', 'loads.misstep.axial', loads.axialN !== undefined),
    ...demand('bending load', 'bendingNmm', 'loads.misstep.bending', loads.bendingNmm !== undefined),
    ...demand('twisting load', 'torsionNmm', 'loads.torsion.share', loads.torsionNmm !== undefined),
  ];
}

function boneInputs(patientCase: Case): Input[] {
  const modulusId = `bone.${classOf(patientCase)}.young`;
  const modulus: Input = {
    words: 'stiffness of the bone',
    move: ({ figures: f }, z) => scale(f, 'boneYoungMPa', factorOf(modulusId, z)),
  };
  const canal = (words: string, reading: keyof Draft['canalZ']): Input => ({
    words,
    move: (draft, z) => {
      draft.canalZ[reading] += z;
    },
  });
  return [
    ...(patientCase.bone.youngMPa === undefined ? [modulus] : []),
    {
      words: 'yield strain of the bone',
      move: ({ figures: f }, z) => scale(f, 'boneYieldStrain', factorOf('bone.yield-strain', z)),
    },
    { words: 'weakening by the holes', move: ({ figures: f }, z) => scale(f, 'holeShare', holeSpread(z)) },
    {
      words: 'width of the bone',
      move: (draft, z) => {
        draft.outerZ += z;
      },
    },
    canal('canal width in the proximal fragment', 'proximal'),
    canal('canal width at the fracture', 'fracture'),
    canal('canal width in the distal fragment', 'distal'),
    {
      words: 'fracture gap',
      move: ({ figures: f }, z) => {
        f.gapMm = Math.max(0, f.gapMm + z * value('interface.fracture.gap-sd'));
      },
    },
  ];
}

type NumberKey = { [K in keyof Figures]: Figures[K] extends number ? K : never }[keyof Figures];

function scale(figures: Figures, key: NumberKey, factor: number): void {
  figures[key] *= factor;
}

/** Spread of what a hole takes beyond 1, from the middle of the measured range. */
function holeSpread(z: number): number {
  const middle = value('bone.hole.fifth');
  return Math.max(0, (middle * factorOf('bone.hole.fifth', z) - 1) / (middle - 1));
}

function gripInputs(construct: Construct): Input[] {
  if (construct.grip === 'bonded') return [];
  return [
    {
      words: 'grip of pins in bone and putty',
      move: ({ figures: f }, z) => {
        const knockDown = (1 + f.slack) * factorOf('interface.knock-down', z);
        f.slack = Math.max(value('interface.smallest-slack'), knockDown - 1);
      },
    },
    {
      words: 'slip of pins out of the column',
      move: ({ figures: f }, z) => scale(f, 'bondShearMPa', factorOf('column.bond-shear', z)),
    },
  ];
}

/** One input a material and property, for all pins made of it together. */
function metalInputs({ drawer }: Case, construct: Construct): Input[] {
  const pins = construct.pins.map((pin) => found(drawer.pins, pin.drawerId));
  const im = construct.im ? found(drawer.imPins, construct.im.drawerId) : null;
  const items = im ? [...pins, im] : pins;
  return [...new Set(items.map((item) => item.material))].flatMap((name) => {
    const material = materialOf(name, 'metal');
    const rods = (f: Figures): RodFigures[] => [
      ...f.pins.filter((_, i) => pins[i]!.material === name),
      ...(f.im && im?.material === name ? [f.im] : []),
    ];
    const each = (words: string, change: (rod: RodFigures, z: number) => void): Input => ({
      words,
      move: ({ figures: f }, z) => {
        for (const rod of rods(f)) change(rod, z);
      },
    });
    const typed = items.some((item) => item.material === name && item.youngMPa !== undefined);
    return [
      ...(typed
        ? []
        : [
            each(`stiffness of ${name}`, (rod, z) => {
              rod.youngMPa *= factorOf(material.youngId, z);
            }),
          ]),
      each(`yield stress of ${name}`, (rod, z) => {
        rod.yieldMPa *= factorOf(material.yieldId, z);
      }),
      each(`fatigue strength of ${name}`, (rod, z) => {
        rod.fatigueMPa *= factorOf(material.fatigue?.levelId ?? material.yieldId, z);
      }),
    ];
  });
}

function columnInputs({ drawer }: Case, construct: Construct): Input[] {
  const choices = columnsOf(construct).map((c) => found(drawer.columns, c.drawerId));
  return choices.flatMap((item, c) => {
    const material = materialOf(item.material, 'moulded');
    const which = choices.length > 1 ? `column ${c + 1}` : 'column';
    const inputs: Input[] = [
      {
        words: `height of the ${which} over the skin`,
        move: ({ figures: f }, z) => {
          const height = f.columns[c]!;
          height.clearanceMm = Math.max(0, height.clearanceMm + z * value('column.clearance-sd'));
        },
      },
      {
        words: `strength of the ${which}`,
        move: ({ figures: f }, z) => {
          const factor = factorOf(material.yieldId, z);
          f.columns[c]!.yieldMPa *= factor;
          f.columns[c]!.fatigueMPa *= factor;
        },
      },
    ];
    if (item.youngMPa === undefined) {
      inputs.push({
        words: `modulus of the ${which}`,
        move: ({ figures: f }, z) => {
          f.columns[c]!.youngMPa *= factorOf(material.youngId, z);
        },
      });
    }
    if (material.moulded) {
      inputs.push({
        words: `diameter of the ${which}`,
        move: ({ figures: f }, z) => {
          f.columns[c]!.diameterMm *= Math.exp(z * value('column.diameter-sd-share'));
        },
      });
    }
    return inputs;
  });
}
