/** How much of the ceiling for local anaesthetics is used, over all sites and drugs. */
import { type CaseState, earlierDoses } from '@bonewright/casebook';
import { localEarlier, localTotal } from '@bonewright/ward';

export function LocalTotalWords({ state }: { readonly state: CaseState }) {
  const massG = state.patient?.value.massG ?? null;
  const doses = localEarlier({ earlier: earlierDoses(state.doses), now: new Date().toISOString() });
  if (massG === null || doses.length === 0) return null;
  const { share, parts } = localTotal(doses, massG);
  const each = parts.map(({ drug, site, share: own }) => `${drug}${site && ` (${site})`} ${percent(own)}`);
  return (
    <p>
      <b>Local anaesthetics: {percent(share)} of the ceiling</b>, {each.join(' + ')}; over 24 h, waiting doses counted.
    </p>
  );
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;
