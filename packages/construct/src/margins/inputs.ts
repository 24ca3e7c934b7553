/**
 * What may be off in a construct's figures, each input by its name in words and by how it moves them when drawn `z`
 * standard deviations from its middle. Figures that the user measured or typed move by their own spread, or not at all.
 */
import { changed, sectionAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { classOf } from '../loads/species.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf, type Figures, found, type RodFigures } from '../model/figures.ts';
import { materialOf } from '../model/materials.ts';
import { pinName } from '../to-frame/pin-part.ts';
import { factorOf } from './spread.ts';

export interface Input {
  readonly words: string;
  /** Moves figures that are the caller's own copy. */
  readonly move: (figures: Figures, z: number) => void;
}

/** Every input of this construct, in a fixed order. */
export function inputsOf(patientCase: Case, construct: Construct, nominal: Figures): Input[] {
  return [
    ...loadInputs(patientCase),
    ...boneInputs(patientCase, nominal),
    ...gripInputs(construct),
    ...metalInputs(patientCase, construct),
    ...columnInputs(patientCase, construct),
    ...construct.pins.map((_, i) => ({
      words: `free length of ${pinName(i)}`,
      move: (f: Figures, z: number) => {
        f.pins[i]!.freeByMm += z * value('column.free-length-sd');
      },
    })),
  ];
}

function loadInputs({ loads = {} }: Case): Input[] {
  const demand = (words: string, key: 'axialN' | 'bendingNmm' | 'torsionNmm', id: string, typed: boolean): Input[] => {
    const move = (f: Figures, z: number) => {
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

function boneInputs(patientCase: Case, nominal: Figures): Input[] {
  const species = classOf(patientCase);
  const { bone, fracture } = patientCase;
  const middle = (fracture.fromMm + fracture.toMm) / 2;
  const { profile } = nominal;
  const canal = (words: string, atMm: number): Input => ({
    words,
    move: (f, z) => {
      const by = z * sectionAt(profile, atMm).canalSdMm;
      f.profile = changed(
        f.profile,
        () => 0,
        (s) => by * nearness(s, atMm, middle, bone.lengthMm),
      );
    },
  });
  const modulus: Input = {
    words: 'stiffness of the bone',
    move: (f, z) => {
      f.boneYoungMPa *= factorOf(`bone.${species}.young`, z);
    },
  };
  return [
    ...(bone.youngMPa === undefined ? [modulus] : []),
    {
      words: 'yield strain of the bone',
      move: (f, z) => scale(f, 'boneYieldStrain', factorOf('bone.yield-strain', z)),
    },
    { words: 'weakening by the holes', move: (f, z) => scale(f, 'holeShare', holeSpread(z)) },
    {
      words: 'width of the bone',
      move: (f, z) => {
        f.profile = changed(
          f.profile,
          (s) => z * sectionAt(profile, s).sdMm,
          () => 0,
        );
      },
    },
    canal('canal width in the proximal fragment', 0),
    canal('canal width at the fracture', middle),
    canal('canal width in the distal fragment', bone.lengthMm),
    {
      words: 'fracture gap',
      move: (f, z) => {
        f.gapMm = Math.max(0, f.gapMm + z * value('interface.fracture.gap-sd'));
      },
    },
  ];
}

/** Weight of a place in one of three canal readings: at the fracture, or towards either end; they add up to 1. */
function nearness(s: number, atMm: number, middle: number, lengthMm: number): number {
  const reach = s < middle ? middle : lengthMm - middle;
  const atMiddle = 1 - Math.min(1, Math.abs(s - middle) / (reach || 1));
  if (atMm === middle) return atMiddle;
  return s < middle === atMm < middle ? 1 - atMiddle : 0;
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
      move: (f, z) => {
        const knockDown = (1 + f.slack) * factorOf('interface.knock-down', z);
        f.slack = Math.max(value('interface.smallest-slack'), knockDown - 1);
      },
    },
    {
      words: 'slip of pins out of the column',
      move: (f, z) => scale(f, 'bondShearMPa', factorOf('column.bond-shear', z)),
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
      move: (f, z) => {
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
        move: (f, z) => {
          const height = f.columns[c]!;
          height.clearanceMm = Math.max(0, height.clearanceMm + z * value('column.clearance-sd'));
        },
      },
      {
        words: `strength of the ${which}`,
        move: (f, z) => {
          const factor = factorOf(material.yieldId, z);
          f.columns[c]!.yieldMPa *= factor;
          f.columns[c]!.fatigueMPa *= factor;
        },
      },
    ];
    if (item.youngMPa === undefined) {
      inputs.push({
        words: `modulus of the ${which}`,
        move: (f, z) => {
          f.columns[c]!.youngMPa *= factorOf(material.youngId, z);
        },
      });
    }
    if (material.moulded) {
      inputs.push({
        words: `diameter of the ${which}`,
        move: (f, z) => {
          f.columns[c]!.diameterMm *= Math.exp(z * value('column.diameter-sd-share'));
        },
      });
    }
    return inputs;
  });
}
