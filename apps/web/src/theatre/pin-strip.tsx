/** All pins in a row: in, now, next, left out. Any can be taken in hand. */
import type { Advice, Construct, InTheatre } from '@bonewright/construct';
import { figure } from '../plan/words.ts';
import { doingOf } from './in-theatre.ts';

interface PinStripProps {
  readonly count: number;
  readonly pin: number | null;
  readonly theatre: InTheatre;
  readonly planned: Construct;
  /** Where the pin in hand is wanted. */
  readonly wantedMm: number | null;
  readonly remaining: readonly Advice[];
  readonly onSelect: (pin: number) => void;
}

export function PinStrip({ count, pin, theatre, planned, wantedMm, remaining, onSelect }: PinStripProps) {
  const all = Array.from({ length: count }, (_, i) => i + 1);
  return (
    <ol className="pin-strip" aria-label="Pins">
      {all.map((each) => {
        const doing = doingOf(theatre, each, pin ?? 0);
        const placed = theatre.placed.find((one) => one.pin === each);
        const sMm =
          (each === pin ? wantedMm : placed?.sMm) ??
          remaining.find((one) => one.pin === each)?.sMm ??
          planned.pins[each - 1]!.sMm;
        return (
          <li key={each} data-doing={doing}>
            <button type="button" aria-current={each === pin ? 'step' : undefined} onClick={() => onSelect(each)}>
              <b>P{each}</b> <span>{doing}</span> <span>{doing === 'left out' ? '' : figure(sMm)}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
