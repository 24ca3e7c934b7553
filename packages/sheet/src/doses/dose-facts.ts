/** What a dose paper is made of: the case as its record stands. Only doses that a vet signed come through this door. */
import type { CaseState, DoseInCase, Signed } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { hasMassMoved, isOfToday, type SignedDose } from '@bonewright/ward';
import type { PageSize } from '../paper/paper.ts';

export interface DosePaperFacts {
  readonly state: CaseState;
  readonly made: Date;
  /** Minutes that the practice's clocks are ahead of UTC. */
  readonly minutesEastOfUtc: number;
  readonly size?: PageSize | undefined;
  readonly version: string;
}

export interface PrintedDose {
  readonly dose: DoseInCase;
  readonly signature: Signed<SignedDose>;
}

/**
 * The doses of that choice, all of them signed. Throws InputError where one is not, where it was signed for a mass that
 * no longer holds, or where there is none: a paper with a gap in it is not printed.
 */
export function signedDoses(facts: DosePaperFacts, isWanted: (dose: DoseInCase) => boolean): PrintedDose[] {
  const wanted = facts.state.doses.filter((dose) => dose.voided === null && isWanted(dose));
  if (wanted.length === 0)
    throw new InputError('no dose is signed for this paper', 'doses', 'a vet writes and signs it first');
  return wanted.map((dose) => {
    const { signed: signature, line } = dose;
    if (!signature) throw new InputError(`${line.drug} is not signed`, 'doses', 'a vet signs it, or it is voided');
    if (dose.given === null) refuseStale(facts, dose, signature.at);
    return { dose, signature };
  });
}

function refuseStale({ state, made, minutesEastOfUtc }: DosePaperFacts, { line }: DoseInCase, signedAt: string): void {
  const massG = state.patient?.value.massG ?? null;
  const hint = 'sign it again for the mass of today, or void it';
  if (massG !== null && hasMassMoved(line.massG, massG))
    throw new InputError(
      `${line.drug} was signed for ${line.massG} g, the patient now weighs ${massG} g`,
      'doses',
      hint,
    );
  if (!isOfToday(signedAt, { now: made.toISOString(), minutesEastOfUtc }))
    throw new InputError(`${line.drug} was signed on another day and not given`, 'doses', hint);
}

const HOUR = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: 'UTC' });
const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });

/** `25 Nov 2026, 21:10` by the clocks of the practice. */
export function localMoment(iso: string, minutesEastOfUtc: number): string {
  const at = new Date(Date.parse(iso) + minutesEastOfUtc * 60_000);
  return `${DAY.format(at)}, ${HOUR.format(at)}`;
}
