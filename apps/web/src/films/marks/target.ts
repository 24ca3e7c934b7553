/** Which mark the next click on a film places. */
import type { Pixel } from '@bonewright/film';
import type { MaybePixel } from './pixel.ts';
import type { Unfinished, Working } from './working.ts';

export const TARGETS = [
  'ball',
  'implant-1',
  'implant-2',
  'click-1',
  'click-2',
  'click-3',
  'click-4',
  'fracture-1',
  'fracture-2',
  'end-1',
  'end-2',
] as const;
export type Target = (typeof TARGETS)[number];

export const TARGET_WORDS: Readonly<Record<Target, string>> = {
  ball: 'the ball',
  'implant-1': 'one edge of the implant',
  'implant-2': 'its other edge, straight across',
  'click-1': 'click 1, proximal part, towards its joint',
  'click-2': 'click 2, proximal part, towards the fracture',
  'click-3': 'click 3, distal part, towards the fracture',
  'click-4': 'click 4, distal part, towards its joint',
  'fracture-1': 'one end of the fracture line',
  'fracture-2': 'the other end of the fracture line',
  'end-1': 'the proximal end of the bone',
  'end-2': 'the distal end of the bone',
};

/** The first mark that is missing; the bone's ends are asked for only on request. Null where nothing is. */
export function nextTarget(working: Working): Target | null {
  const wanted = TARGETS.filter((target) => !target.startsWith('end'));
  return (
    wanted.find((target) => isOfKind(target, working.calibration.kind) && placeOf(working, target) === null) ?? null
  );
}

/** A ball or an implant is asked for only where the scale is taken from it. */
export function isOfKind(target: Target, kind: Working['calibration']['kind']): boolean {
  const [group] = groupOf(target);
  return (group !== 'ball' && group !== 'implant') || group === kind;
}

export function placeOf(working: Working, target: Target): MaybePixel {
  const [group, index] = groupOf(target);
  if (group === 'ball') return working.calibration.near;
  if (group === 'implant') return working.calibration.across[index] ?? null;
  return working[group][index] ?? null;
}

/** The unfinished work after the mark has been put there, or taken away. */
export function withMark(working: Working, unfinished: Unfinished, target: Target, place: MaybePixel): Unfinished {
  const [group, index] = groupOf(target);
  if (group === 'ball') return { ...unfinished, calibration: { ...working.calibration, near: place } };
  if (group === 'implant') {
    const [a, b] = working.calibration.across.map((old, i) => (i === index ? place : old));
    return { ...unfinished, calibration: { ...working.calibration, across: [a ?? null, b ?? null] } };
  }
  if (group === 'clicks') {
    const [a, b, c, d] = working.clicks.map((old, i) => (i === index ? place : old));
    return { ...unfinished, clicks: [a ?? null, b ?? null, c ?? null, d ?? null] };
  }
  const [a, b] = working[group].map((old, i) => (i === index ? place : old));
  return { ...unfinished, [group]: [a ?? null, b ?? null] };
}

type Group = 'ball' | 'implant' | 'clicks' | 'fracture' | 'ends';

function groupOf(target: Target): readonly [Group, number] {
  const [name, number] = target.split('-');
  const index = Number(number ?? 1) - 1;
  if (name === 'click') return ['clicks', index];
  if (name === 'fracture' || name === 'implant') return [name, index];
  return name === 'end' ? ['ends', index] : ['ball', 0];
}

/** Rounded to a hundredth of a pixel: finer than any hand, short enough to read in a record. */
export const tidy = ([col, row]: Pixel): Pixel => [Math.round(col * 100) / 100, Math.round(row * 100) / 100];
