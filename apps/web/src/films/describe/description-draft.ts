/** The description of fracture, safe lengths and soft tissue as typed, and the entries that follow. */
import type { JoinedBone } from '@bonewright/film';
import { readNumber } from '../../form/read-number.ts';
import type { NewEvent } from '../../sync/new-event.ts';

export interface DescriptionDraft {
  readonly from: string;
  readonly to: string;
  readonly gap: string;
  readonly obliquity: string;
  readonly comminuted: boolean;
  /** `21 to 24, 30 to 31.5` */
  readonly fissures: string;
  readonly keepOutProximal: string;
  readonly keepOutDistal: string;
  readonly softProximal: string;
  readonly softDistal: string;
}

export type DescriptionFaults = Partial<Record<keyof DescriptionDraft, string>>;

const MOST_OBLIQUE_DEG = 85;

/** One sentence for each field that cannot be recorded. */
export function faultsIn(draft: DescriptionDraft, bone: JoinedBone): DescriptionFaults {
  const faults: DescriptionFaults = {};
  const length = bone.lengthMm.value ?? Number.POSITIVE_INFINITY;
  const within = (key: keyof DescriptionFaults, most: number, unit: string) => {
    const value = readNumber(String(draft[key]));
    if (value === null) faults[key] = 'Write a number.';
    else if (value < 0 || value > most) faults[key] = `From 0 to ${Math.round(most * 10) / 10} ${unit}.`;
  };
  within('from', length, 'mm');
  within('to', length, 'mm');
  within('gap', length, 'mm');
  within('obliquity', MOST_OBLIQUE_DEG, 'deg');
  within('keepOutProximal', length, 'mm');
  within('keepOutDistal', length, 'mm');
  within('softProximal', length, 'mm');
  within('softDistal', length, 'mm');
  const [from, to, gap] = [readNumber(draft.from), readNumber(draft.to), readNumber(draft.gap)];
  if (from !== null && to !== null && to < from) faults.to = 'It lies before the beginning of the fracture.';
  else if (from !== null && to !== null && gap !== null && gap > to - from)
    faults.gap = `The gap is wider than the broken stretch, ${Math.round((to - from) * 10) / 10} mm. Widen the stretch or narrow the gap.`;
  if (fissuresIn(draft.fissures) === null)
    faults.fissures = 'Write each from its beginning to its end, like 21 to 24, 30 to 31.5.';
  return faults;
}

/** Null where the text is not a list of stretches. */
function fissuresIn(text: string): [number, number][] | null {
  const parts = text
    .split(/[;,]\s+|;|,(?=\s)/)
    .map((part) => part.trim())
    .filter(Boolean);
  const stretches = parts.map((part) => {
    const [from, to, ...more] = part.split(/\s+to\s+|\s*[–-]\s*/).map(readNumber);
    return from != null && to != null && more.length === 0 && from <= to
      ? ([from, to] satisfies [number, number])
      : null;
  });
  const read = stretches.filter((stretch) => stretch !== null);
  return read.length === parts.length ? read : null;
}

/** Entries for what was typed; empty while a field is wrong. */
export function described(draft: DescriptionDraft, bone: JoinedBone): NewEvent[] {
  if (Object.keys(faultsIn(draft, bone)).length > 0) return [];
  const n = (text: string): number => readNumber(text) ?? 0;
  const length = bone.lengthMm.value ?? bone.stations.at(-1)?.sMm ?? 0;
  return [
    {
      kind: 'fracture-described',
      payload: {
        fromMm: n(draft.from),
        toMm: n(draft.to),
        gapMm: n(draft.gap),
        obliquityDeg: n(draft.obliquity),
        comminuted: draft.comminuted,
        fissuresMm: fissuresIn(draft.fissures) ?? [],
      },
    },
    { kind: 'keep-out-set', payload: { proximalMm: n(draft.keepOutProximal), distalMm: n(draft.keepOutDistal) } },
    {
      kind: 'soft-tissue-set',
      payload: {
        softTissueMm: [
          { sMm: 0, depthMm: n(draft.softProximal) },
          { sMm: length, depthMm: n(draft.softDistal) },
        ],
      },
    },
  ];
}
