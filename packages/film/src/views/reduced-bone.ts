/** The joined bone as it stands when a reduction is kept: what is left of bend, offset and override is in its shape. */
import type { JoinedBone, Measured } from '../model/trace.ts';
import { straightened } from './join-views.ts';
import type { ReductionFacts } from './reduction.ts';

/**
 * The bone to plan on after `facts` (of `reductionFacts`, moved by `reducedBy`): a joined bone is taken as fully reduced,
 * so what the facts say is left is put back into its distal part. What is null in the facts counts as reduced.
 * Where fragments still override, the covered stretch of the distal one is left out and the bone is shorter.
 */
export function reducedBone(joined: JoinedBone, facts: ReductionFacts): JoinedBone {
  const { fromMm, toMm } = joined.fracture;
  const fractureMm = (fromMm + toMm) / 2;
  const shorter = left(facts.shorteningMm);
  const slope = facts.angulationDeg.map((a) => Math.tan((left(a) * Math.PI) / 180));
  const proximal = joined.stations.filter((s) => s.sMm <= fractureMm);
  const last = proximal.at(-1)?.sMm ?? 0;
  const distal = joined.stations
    .filter((s) => s.sMm > fractureMm)
    .map((s) => {
      const away = s.sMm - fractureMm;
      const off = (i: 0 | 1) => s.offsetMm[i] + left(facts.offsetMm[i]) + slope[i]! * away;
      return { ...s, sMm: s.sMm - shorter, offsetMm: [off(0), off(1)] as const };
    })
    .filter((s) => s.sMm > last);
  const length = joined.lengthMm;
  return {
    ...joined,
    lengthMm: length.value === null ? length : { ...length, value: length.value - shorter },
    stations: straightened([...proximal, ...distal]),
    // a gap lengthens the fracture, an override does not
    fracture: { ...joined.fracture, toMm: toMm + Math.max(0, -shorter) },
    angulationDeg: {
      craniocaudal: facts.angulationDeg[0],
      mediolateral: facts.angulationDeg[1],
      true: facts.trueAngulationDeg,
    },
    planeFromCraniocaudalDeg: facts.planeFromCraniocaudalDeg,
    translationMm: facts.trueOffsetMm,
    narrowestCanalMm: movedCanal(joined.narrowestCanalMm, fractureMm, shorter),
  };
}

const left = (m: Measured): number => m.value ?? 0;

function movedCanal(
  canal: JoinedBone['narrowestCanalMm'],
  fractureMm: number,
  shorter: number,
): JoinedBone['narrowestCanalMm'] {
  return canal && canal.sMm > fractureMm ? { ...canal, sMm: canal.sMm - shorter } : canal;
}
