import { directionWords } from '@bonewright/construct';
import type { JoinedBone, Measured } from '@bonewright/film';
import { figure } from '../../plan/words.ts';

interface Row {
  readonly name: string;
  readonly detail?: string;
  readonly measured: Measured;
  readonly unit: string;
  readonly decimals: number;
}

/** Value, spread and unit in columns of their own; what was not measured says so and why. */
interface FindingsTableProps {
  readonly bone: JoinedBone;
  /** Both ends are marked on both films. */
  readonly hasEnds: boolean;
}

export function FindingsTable({ bone, hasEnds }: FindingsTableProps) {
  return (
    <table className="findings-table">
      <caption className="sr-only">Measured on the two films together</caption>
      <thead className="sr-only">
        <tr>
          <th scope="col">what</th>
          <th scope="col">value</th>
          <th scope="col">give or take</th>
          <th scope="col">unit</th>
        </tr>
      </thead>
      <tbody>
        {rowsOf(bone, hasEnds).map(({ name, detail, measured, unit, decimals }) => (
          <tr key={name}>
            <th scope="row">
              {name}
              {detail && <span className="findings-detail">{detail}</span>}
            </th>
            {measured.value === null ? (
              <td colSpan={3} className="findings-none">
                not measured{measured.why ? `: ${measured.why}` : ''}
              </td>
            ) : (
              <>
                <td className="findings-value">{figure(measured.value, decimals)}</td>
                <td className="findings-sd">{measured.sd === null ? '' : `± ${figure(measured.sd, decimals)}`}</td>
                <td className="findings-unit">{unit}</td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const size = (measured: Measured): Measured =>
  measured.value === null ? measured : { ...measured, value: Math.abs(measured.value) };

function rowsOf(bone: JoinedBone, hasEnds: boolean): Row[] {
  const { craniocaudal, mediolateral, true: whole } = bone.angulationDeg;
  const plane = bone.planeFromCraniocaudalDeg.value;
  const narrow = bone.narrowestCanalMm;
  return [
    {
      name: 'Bent, seen craniocaudal',
      measured: size(craniocaudal),
      unit: 'deg',
      decimals: 1,
      ...towards(craniocaudal, 'medially', 'laterally'),
    },
    {
      name: 'Bent, seen mediolateral',
      measured: size(mediolateral),
      unit: 'deg',
      decimals: 1,
      ...towards(mediolateral, 'cranially', 'caudally'),
    },
    {
      name: 'True bend',
      ...(plane === null ? {} : { detail: `, distal part ${directionWords(plane)}` }),
      measured: whole,
      unit: 'deg',
      decimals: 1,
    },
    { name: 'Shifted, the two views together', measured: bone.translationMm, unit: 'mm', decimals: 2 },
    {
      name: 'Length, reduced',
      detail: hasEnds ? ', end to end' : ', from click 1 to click 4',
      measured: bone.lengthMm,
      unit: 'mm',
      decimals: 1,
    },
    narrow
      ? {
          name: 'Narrowest canal',
          detail: `, ${figure(narrow.sMm, 0)} mm down, ${narrow.view}`,
          measured: narrow,
          unit: 'mm',
          decimals: 2,
        }
      : {
          name: 'Narrowest canal',
          measured: { value: null, sd: null, why: 'no canal wall was found' },
          unit: 'mm',
          decimals: 2,
        },
  ];
}

/** Which way the distal part leans, by the sign of its bend. */
function towards({ value }: Measured, positive: string, negative: string): { detail?: string } {
  if (value === null || value === 0) return {};
  return { detail: `, distal part ${value > 0 ? positive : negative}` };
}
