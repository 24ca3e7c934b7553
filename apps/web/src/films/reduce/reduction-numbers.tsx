/** What is left of the displacement, number by number: as the films show it, and as the part lies now. */
import { directionWords } from '@bonewright/construct';
import type { Measured, ReductionFacts } from '@bonewright/film';
import { figure } from '../../plan/words.ts';

interface ReductionNumbersProps {
  readonly before: ReductionFacts;
  readonly now: ReductionFacts;
}

interface Row {
  readonly name: string;
  readonly pick: (facts: ReductionFacts) => Measured;
  readonly unit: string;
  readonly decimals: number;
  /** Which way, by the sign; absent where a sign says nothing. */
  readonly ways?: readonly [positive: string, negative: string];
  /** Shares are shown in per cent. */
  readonly times?: number;
}

const MEDIAL = ['medially', 'laterally'] as const;
const CRANIAL = ['cranially', 'caudally'] as const;
const ROWS: readonly Row[] = [
  { name: 'Bent, craniocaudal', pick: (f) => f.angulationDeg[0], unit: 'deg', decimals: 1, ways: MEDIAL },
  { name: 'Bent, mediolateral', pick: (f) => f.angulationDeg[1], unit: 'deg', decimals: 1, ways: CRANIAL },
  { name: 'True bend', pick: (f) => f.trueAngulationDeg, unit: 'deg', decimals: 1 },
  { name: 'Shifted, craniocaudal', pick: (f) => f.offsetMm[0], unit: 'mm', decimals: 2, ways: MEDIAL },
  { name: 'Shifted, mediolateral', pick: (f) => f.offsetMm[1], unit: 'mm', decimals: 2, ways: CRANIAL },
  { name: 'Shifted, together', pick: (f) => f.trueOffsetMm, unit: 'mm', decimals: 2 },
  { name: 'Ends that face each other', pick: (f) => f.appositionOfSection, unit: '%', decimals: 0, times: 100 },
  { name: 'Shortened', pick: (f) => f.shorteningMm, unit: 'mm', decimals: 2, ways: ['overriding', 'apart'] },
  { name: 'Turned about the bone', pick: (f) => f.rotationDeg, unit: 'deg', decimals: 0 },
];

export function ReductionNumbers({ before, now }: ReductionNumbersProps) {
  return (
    <table className="findings-table reduction-numbers">
      <caption className="sr-only">What is left, as the films show it and as the part lies now</caption>
      <thead>
        <tr>
          <th scope="col">left</th>
          <th scope="col">films</th>
          <th scope="col">now</th>
          <th scope="col">
            <span className="sr-only">give or take</span>
          </th>
          <th scope="col">
            <span className="sr-only">unit</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {ROWS.map((row) => (
          <NumberRow key={row.name} row={row} before={before} now={now} />
        ))}
      </tbody>
    </table>
  );
}

function NumberRow({ row, before, now }: ReductionNumbersProps & { readonly row: Row }) {
  const { name, pick, unit, decimals, ways, times = 1 } = row;
  const [was, is] = [pick(before), pick(now)];
  const words = (value: number) => figure((ways ? Math.abs(value) : value) * times, decimals);
  const way = is.value === null || Number(is.value.toFixed(decimals)) === 0 ? null : wayOf(row, now, is.value);
  return (
    <tr>
      <th scope="row">
        {name}
        {way && <span className="findings-detail">, {way}</span>}
      </th>
      {was.value === null || is.value === null ? (
        <td colSpan={4} className="findings-none">
          not measured{is.why ? `: ${is.why}` : ''}
        </td>
      ) : (
        <>
          <td className="reduction-was">{words(was.value)}</td>
          <td className="findings-value">{words(is.value)}</td>
          <td className="findings-sd">{is.sd === null ? '' : `± ${figure(is.sd * times, decimals)}`}</td>
          <td className="findings-unit">{unit}</td>
        </>
      )}
    </tr>
  );
}

function wayOf({ name, ways }: Row, now: ReductionFacts, value: number): string | null {
  const plane = now.planeFromCraniocaudalDeg.value;
  if (name === 'True bend') return plane === null ? null : directionWords(plane);
  return ways ? ways[value > 0 ? 0 : 1] : null;
}
