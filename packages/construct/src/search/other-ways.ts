/**
 * The same pins put in another way: smooth ones leaned against each other within a fragment, or every other pin turned,
 * so that one column holds pins in two planes. Threaded pins stay square.
 */
import { type FragmentName, fragmentAt, fragmentsOf, sectionAt, widthAcross } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { corridorsAt, degreesOutside } from '../checks/corridor.ts';
import type { Construct } from '../model/case-file.ts';
import { found } from '../model/figures.ts';
import type { Plan } from '../model/plan.ts';
import { frameFacts } from '../to-frame/masses.ts';
import type { Ground } from './candidates.ts';
import { GRID_MM } from './sites.ts';
import type { Solve, Solved } from './solve.ts';
import { worstMargin } from './worth.ts';

type Pin = Construct['pins'][number];

export type PinsWay = 'square' | 'opposed' | 'two planes';

export function pinsWay({ pins }: Pick<Plan, 'pins'>): PinsWay {
  if (pins.some(({ tiltDeg }) => tiltDeg !== 0)) return 'opposed';
  return pins.some(({ aboutDeg }) => aboutDeg !== pins[0]?.aboutDeg) ? 'two planes' : 'square';
}

/** The best of the other ways where it gains enough over the square pins it started from; each counts as a kind. */
export function otherWays(ground: Ground, square: Solved, solve: Solve): Solved[] {
  const enough = value('plan.other-way.gain') * worstMargin(square.plan);
  const better = [opposed(ground, square.construct), twoPlanes(ground, square.construct)].map((constructs) =>
    constructs
      .map(solve)
      .filter((solved) => solved !== null && worstMargin(solved.plan) >= enough)
      .reduce<Solved | null>((a, b) => (a === null || (b !== null && b.worth > a.worth) ? b : a), null),
  );
  return better.filter((solved) => solved !== null);
}

/** Outer ends away from each other, and towards each other. */
function opposed(ground: Ground, construct: Construct): Construct[] {
  const { drawer } = ground.patientCase;
  const isThreaded = ({ drawerId }: Pin) => found(drawer.pins, drawerId).kind.startsWith('threaded');
  if (construct.pins.some(isThreaded)) return [];
  const deg = value('rule.smooth-pin.tilt');
  return [-deg, deg].map((tiltDeg) => ({ ...construct, pins: leaned(ground, construct.pins, tiltDeg) }));
}

/** The first half of each fragment's pins leans one way, the last the other, a middle one not at all. */
function leaned({ patientCase: { bone, fracture }, profile, aboutDeg }: Ground, pins: readonly Pin[], deg: number) {
  const fragments = fragmentsOf(bone.lengthMm, fracture);
  const fragment = ({ sMm }: Pin): FragmentName | null => fragmentAt(fragments, sMm);
  return pins.map((pin) => {
    const mine = pins.filter((other) => fragment(other) === fragment(pin));
    const sense = Math.sign((mine.length - 1) / 2 - mine.indexOf(pin));
    const tan = Math.tan((Math.abs(deg) * Math.PI) / 180);
    const reach = (widthAcross(sectionAt(profile, pin.sMm), aboutDeg) / 2) * tan;
    // Its holes lie to both sides of its place: the outermost come in by so much that they keep their distances.
    const isOutermost = pin === mine[0] || pin === mine[mine.length - 1];
    const inward = isOutermost ? sense * Math.ceil(reach / GRID_MM) * GRID_MM : 0;
    return { ...pin, sMm: pin.sMm + inward, tiltDeg: sense * deg };
  });
}

/** Every other pin turned one way, the rest the other, where each stays in its corridor and the column stays straight. */
function twoPlanes({ patientCase }: Ground, construct: Construct): Construct[] {
  const { corridors } = patientCase;
  if (!corridors || corridors.length === 0) return [];
  const turnDeg = value('plan.two-planes.turn');
  const isOpen = ({ sMm, aboutDeg }: Pin) =>
    corridorsAt(corridors, sMm).some((corridor) => degreesOutside(corridor.aboutDeg, aboutDeg) === 0);
  return [-turnDeg, turnDeg]
    .map((deg) => ({
      ...construct,
      pins: construct.pins.map((pin, i) => ({ ...pin, aboutDeg: pin.aboutDeg + (i % 2 === 0 ? deg : -deg) })),
    }))
    .filter(
      (turned) =>
        turned.pins.every(isOpen) && frameFacts(patientCase, turned).layout.columns.every((c) => c.isStraight),
    );
}
