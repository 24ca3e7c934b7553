/** The bone cut square at one pin, drawn round: drag the pin's end to turn it about the bone. */
import type { Case, Construct } from '@bonewright/construct';
import { direction, sectionAt } from '../../drawing/geometry/section.ts';
import { useDrag } from './use-drag.ts';

interface SectionDialProps {
  readonly patientCase: Case;
  readonly construct: Construct;
  readonly index: number;
  readonly onTurn: (aboutDeg: number) => void;
}

const SIZE = 136;
const ARM = 37;
/** The bone fills this much of the dial. */
const BONE_PX = 25;

export function SectionDial({ patientCase, construct, index, onTurn }: SectionDialProps) {
  const pin = construct.pins[index];
  const middle = SIZE / 2;
  const drag = useDrag(
    (event) => {
      const box = event.currentTarget.closest('svg')?.getBoundingClientRect();
      return box ? [event.clientX - box.left - middle, event.clientY - box.top - middle] : [0, 0];
    },
    ([x = 0, y = 0], right, down) => onTurn((Math.atan2(-(y + down), x + right) * 180) / Math.PI),
  );
  if (!pin) return null;
  const { outerMm, canalMm } = sectionAt(patientCase.bone.stations, pin.sMm);
  const pxPerMm = BONE_PX / (Math.max(...outerMm) / 2);
  const oval = ([medial, cranial]: readonly [number, number]) => ({
    rx: (medial / 2) * pxPerMm,
    ry: (cranial / 2) * pxPerMm,
  });
  const [c, s] = direction(pin.aboutDeg);
  const diameterMm = patientCase.drawer.pins.find(({ id }) => id === pin.drawerId)?.diameterMm ?? 0;
  const imMm = patientCase.drawer.imPins.find(({ id }) => id === construct.im?.drawerId)?.diameterMm;
  return (
    <svg
      width={SIZE}
      height={SIZE}
      viewBox={`${-middle} ${-middle} ${SIZE} ${SIZE}`}
      className="section-dial"
      role="img"
      aria-label={`Bone cut at P${index + 1}, seen from proximal`}
    >
      <ellipse {...oval(outerMm)} fill="var(--bone)" stroke="var(--ink)" strokeWidth="1.75" />
      <ellipse {...oval(outerMm)} fill="url(#hatch-keepout)" opacity="0.5" />
      {canalMm && <ellipse {...oval(canalMm)} fill="var(--bone)" stroke="var(--ink)" />}
      <g {...drag} className="pin-turn">
        <path
          d={`M${-c * (BONE_PX + 6)} ${s * (BONE_PX + 6)}L${c * ARM} ${-s * ARM}`}
          stroke="var(--moss)"
          strokeWidth={Math.max(2.5, diameterMm * pxPerMm)}
          fill="none"
        />
        <circle cx={c * ARM} cy={-s * ARM} r="7" fill="var(--moss)" />
        <circle cx={c * ARM} cy={-s * ARM} r="16" fill="transparent" />
      </g>
      {imMm && <circle r={(imMm / 2) * pxPerMm} fill="var(--leaf)" stroke="var(--ink)" strokeWidth="1.5" />}
      <g className="dial-words">
        <text x={middle - 2} y="4" textAnchor="end">
          med
        </text>
        <text x={-middle + 2} y="4">
          lat
        </text>
        <text y={-middle + 10} textAnchor="middle">
          cran
        </text>
        <text y={middle - 3} textAnchor="middle">
          caud
        </text>
      </g>
    </svg>
  );
}
