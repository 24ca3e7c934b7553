/** Which evidence entries stand behind the figures and the margin of one load. */
import { unionWeeksId } from '../loads/demand.ts';
import { classOf, isHedgehog } from '../loads/species.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf, found } from '../model/figures.ts';
import { materialOf } from '../model/materials.ts';
import type { LoadName } from '../model/plan.ts';

/** Ids in the order of the path from load to failure, each once; what the case states for itself is left out. */
export function evidenceOf(patientCase: Case, construct: Construct, load: LoadName): string[] {
  return [
    ...new Set([
      ...loadIds(patientCase, load),
      ...(patientCase.bone.youngMPa === undefined ? [`bone.${classOf(patientCase)}.young`] : []),
      ...BONE_IDS,
      ...partIds(patientCase, construct),
      ...(construct.grip === 'usual' ? GRIP_IDS : []),
    ]),
  ];
}

const BONE_IDS = [
  'bone.yield-strain',
  'bone.hole.tenth',
  'bone.hole.fifth',
  'bone.hole.quarter',
  'bone.hole.neutral-weight',
  'interface.cortex.rotation',
  'interface.putty.depth',
];
const GRIP_IDS = ['interface.knock-down', 'interface.seat-modulus', 'column.bond-shear'];

function loadIds(patientCase: Case, load: LoadName): string[] {
  const { loads = {} } = patientCase;
  const bending = [
    'loads.misstep.bending',
    'loads.bending.reference-mass',
    ...(isHedgehog(patientCase) ? ['loads.curl.factor'] : []),
  ];
  const step = [`loads.stance.${classOf(patientCase)}`, 'loads.misstep.axial'];
  const often = [
    ...(loads.cyclesPerDay === undefined ? ['loads.cycles.caged'] : []),
    ...(loads.days === undefined ? [unionWeeksId(patientCase)] : []),
  ];
  if (load.startsWith('axial'))
    return [...(loads.axialN === undefined ? ['loads.misstep.axial'] : []), ...step, ...often];
  const bent = loads.bendingNmm === undefined ? bending : [];
  if (load !== 'torsion') return [...bent, ...step, ...often];
  return [...(loads.torsionNmm === undefined ? ['loads.torsion.share', ...bent] : []), ...step, ...often];
}

function partIds({ drawer }: Case, construct: Construct): string[] {
  const rods = [
    ...construct.pins.map((pin) => found(drawer.pins, pin.drawerId)),
    ...(construct.im ? [found(drawer.imPins, construct.im.drawerId)] : []),
  ];
  const metals = rods.flatMap((item) => idsOf(item, 'metal'));
  const columns = columnsOf(construct).flatMap((c) => idsOf(found(drawer.columns, c.drawerId), 'moulded'));
  const im = construct.im
    ? ['interface.canal.contact', 'interface.seat.modulus', ...(construct.im.tiedIn ? ['steel.annealed.yield'] : [])]
    : [];
  return [...metals, ...im, ...columns];
}

interface Item {
  readonly material: string;
  readonly youngMPa?: number | undefined;
  readonly yieldMPa?: number | undefined;
}

function idsOf({ material: name, youngMPa, yieldMPa }: Item, use: 'metal' | 'moulded'): string[] {
  const { youngId, yieldId, fatigue } = materialOf(name, use);
  return [
    ...(youngMPa === undefined ? [youngId] : []),
    ...(yieldMPa === undefined ? [yieldId] : []),
    ...(fatigue ? [fatigue.levelId, fatigue.ultimateId, 'steel.saline-factor'] : ['column.working-share']),
  ];
}
