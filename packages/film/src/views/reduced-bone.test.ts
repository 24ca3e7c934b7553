import { describe, expect, test } from 'vitest';
import { DRAWN, type DrawnBone, drawnTrace } from '../correct/drawn-trace.ts';
import type { JoinedBone, TracedView } from '../model/trace.ts';
import { lineFrame, pointAt } from '../trace/frame.ts';
import { joinViews } from './join-views.ts';
import { reducedBone } from './reduced-bone.ts';
import { fullReduction, reducedBy, reductionFacts } from './reduction.ts';

function view(bone: Partial<DrawnBone>, columnTowards: TracedView['columnTowards']): TracedView {
  const trace = drawnTrace({ ...DRAWN, ...bone });
  const { axis } = trace.segments[0]!;
  const frame = lineFrame(axis.from, axis.to);
  const at = frame.lengthPx;
  return { trace, columnTowards, fractureLine: [pointAt(frame, at, -40), pointAt(frame, at, 40)] };
}

const cc = view({ angulationDeg: -10, offsetMm: -1 }, 'medial');
const ml = view({}, 'cranial');
const joined = joinViews(cc, ml, 90);
const ends = [cc.trace.segments[0]!.axis.to, cc.trace.segments[1]!.axis.from] as const;
const facts = reductionFacts(cc, ml, 90, { craniocaudal: ends });

/** Offset and slope of a straight stretch of the centreline, craniocaudal view, read at the fracture. */
function lineOf({ stations, fracture }: JoinedBone, part: 'proximal' | 'distal') {
  const at = (fracture.fromMm + fracture.toMm) / 2;
  const own = stations.filter((s) => (part === 'proximal' ? s.sMm < at : s.sMm > at));
  const [a, b] = [own[1]!, own.at(-2)!];
  const slope = (b.offsetMm[0] - a.offsetMm[0]) / (b.sMm - a.sMm);
  return { slope, offset: a.offsetMm[0] + slope * (at - a.sMm) };
}

describe('a bone kept for planning', () => {
  test('fully reduced is the joined bone, straight and as long', () => {
    const bone = reducedBone(joined, reducedBy(facts, fullReduction(facts)));
    expect(bone.lengthMm.value).toBeCloseTo(joined.lengthMm.value!, 9);
    for (const s of bone.stations) expect(Math.abs(s.offsetMm[0])).toBeLessThan(1e-6);
    expect(bone.angulationDeg.true.value).toBeCloseTo(0, 9);
  });
  test('not reduced at all, the 10 degrees medially and the 1 mm step are in its centreline', () => {
    const bone = reducedBone(joined, facts);
    const [p, d] = [lineOf(bone, 'proximal'), lineOf(bone, 'distal')];
    expect(d.slope - p.slope).toBeCloseTo(Math.tan((10 * Math.PI) / 180), 6);
    expect(d.offset - p.offset).toBeCloseTo(1, 6);
    expect(bone.stations[0]!.offsetMm[0]).toBe(0);
  });
  test('an override of 3 mm that stays makes it 3 mm shorter, its stations still in order', () => {
    const bone = reducedBone(joined, reducedBy(facts, { lengthMm: -3 }));
    expect(bone.lengthMm.value).toBeCloseTo(joined.lengthMm.value! - 3, 9);
    expect(bone.stations.at(-1)!.sMm).toBeCloseTo(bone.lengthMm.value!, 6);
    for (const [i, s] of bone.stations.entries()) if (i > 0) expect(s.sMm).toBeGreaterThan(bone.stations[i - 1]!.sMm);
  });
});
