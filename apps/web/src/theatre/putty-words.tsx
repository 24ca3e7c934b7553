/** Putty in the head of the stage: how long ago it was mixed, whether it is hard. */
import type { Theatre } from '@bonewright/casebook';
import { minutesSince, useNow } from './use-now.ts';

export function PuttyWords({ theatre: { putty } }: { readonly theatre: Theatre }) {
  const now = useNow();
  if (!putty) return null;
  const { mixed, hard } = putty;
  const { workingMinutes } = mixed.value;
  const minutes = minutesSince(mixed.value.at, now);
  return (
    <p className="theatre-clock">
      putty {hard ? 'hard after' : 'mixed'}{' '}
      <b>{hard ? minutesSince(mixed.value.at, Date.parse(hard.value.at)) : minutes} min</b>
      {!hard && (workingMinutes === null ? ' ago' : ` of ${workingMinutes}`)}
    </p>
  );
}
