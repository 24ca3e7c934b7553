/** What was done in theatre, folded: pins as they stand, the last mix of putty, the last count of each thing. */
import type { PinInTheatre, Theatre } from './case-state.ts';
import type { EventOf } from './events.ts';
import { signed } from './signed.ts';

export type TheatreEvent = EventOf<
  'pin-placed' | 'pin-skipped' | 'pin-taken-back' | 'putty-mixed' | 'putty-hard' | 'counted'
>;

export const isPuttyWithoutMix = ({ putty }: Theatre, event: TheatreEvent): boolean =>
  event.kind === 'putty-hard' && putty === null;

export function applyInTheatre(theatre: Theatre, event: TheatreEvent): Theatre {
  switch (event.kind) {
    case 'pin-placed':
      return withPin(theatre, event.payload.pin, (pin) => ({
        ...pin,
        placed: signed(event, event.payload),
        leftOut: null,
      }));
    case 'pin-skipped': {
      const said = signed(event, event.payload);
      return withPin(theatre, event.payload.pin, (pin) =>
        event.payload.triedMm === null
          ? { ...pin, placed: null, leftOut: said }
          : { ...pin, placed: null, tried: [...pin.tried, said] },
      );
    }
    case 'pin-taken-back':
      return withPin(theatre, event.payload.pin, (pin) => ({ ...pin, placed: null, leftOut: null }));
    case 'putty-mixed':
      return { ...theatre, putty: { mixed: signed(event, event.payload), hard: null } };
    case 'putty-hard':
      return { ...theatre, putty: theatre.putty && { ...theatre.putty, hard: signed(event, event.payload) } };
    case 'counted': {
      const isSame = (count: Theatre['counts'][number]) => count.value.what === event.payload.what;
      return { ...theatre, counts: withLast(theatre.counts, isSame, signed(event, event.payload)) };
    }
  }
}

/** The list with that one in the place of the one it corrects, or at its end. */
export function withLast<T>(list: readonly T[], isSame: (item: T) => boolean, last: T): readonly T[] {
  return list.some(isSame) ? list.map((item) => (isSame(item) ? last : item)) : [...list, last];
}

function withPin(theatre: Theatre, pin: number, change: (pin: PinInTheatre) => PinInTheatre): Theatre {
  const before = theatre.pins.find((each) => each.pin === pin) ?? { pin, placed: null, tried: [], leftOut: null };
  return { ...theatre, pins: withLast(theatre.pins, (each) => each.pin === pin, change(before)) };
}
