/** A paper of a construct, drawn by the server; lengths on it are true. */
import { type CaseState, filmsBefore } from '@bonewright/casebook';
import type { Case, Construct } from '@bonewright/construct';
import { PAGE_HEADER } from '../../sync/api.ts';
import { practiceRecord } from '../../sync/records.ts';
import { capital } from '../../words/patient.ts';
import { paperMoment } from '../../words/time.ts';

const LONGEST_WAIT_MS = 60_000;

export type PaperName = 'theatre' | 'report' | 'implants';

/** The PDF; throws an error whose message says what went wrong. */
export async function askSheet(
  paper: PaperName,
  state: CaseState,
  patientCase: Case,
  construct: Construct,
): Promise<Blob> {
  const response = await fetch('/api/sheet', {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...PAGE_HEADER },
    body: JSON.stringify({
      paper,
      caseFile: { ...patientCase, construct },
      title: titleOf(state),
      ...(paper === 'implants' && { used: usedIn(state.caseId) }),
    }),
    signal: AbortSignal.timeout(LONGEST_WAIT_MS),
  }).catch(() => {
    throw new Error('The server does not answer, so there is no sheet yet. The plan is kept.');
  });
  if (response.ok) return response.blob();
  const said: unknown = await response.json().catch(() => null);
  throw new Error(errorWords(said) ?? `The server answered ${response.status} and made no sheet.`);
}

/** What the stock says went into this patient; putty is named by its mixes, which are one column. */
function usedIn(caseId: string) {
  const { uses } = practiceRecord().snapshot().state.stock;
  return uses
    .filter(({ value }) => value.forCase === caseId)
    .map(({ value: { as, itemId, batch } }) => ({
      as: as.startsWith('putty') ? 'putty' : as,
      drawerId: itemId,
      batch,
    }));
}

function errorWords(said: unknown): string | null {
  if (typeof said !== 'object' || said === null || !('error' in said)) return null;
  return typeof said.error === 'string' ? said.error : null;
}

function titleOf(state: CaseState) {
  const { patient, construct } = state;
  const { species = 'patient', number = '', weighedAt = null, demonstration = false } = patient?.value ?? {};
  return {
    patient: `${capital(species)} ${number}`.trim(),
    ...(weighedAt ? { weighed: paperMoment(weighedAt) } : {}),
    ...(construct ? { planned: paperMoment(construct.at) } : {}),
    lengthsFrom: lengthsFrom(filmsBefore(state)),
    isDemonstration: demonstration,
  };
}

/** `5 mm ball, both films`; each calibration once. */
function lengthsFrom(films: CaseState['films']): string {
  const words = films.flatMap(({ calibration }) => {
    if (!calibration) return [];
    const { value } = calibration;
    if (value.kind === 'ball') return [`${value.diameterMm} mm ball`];
    return [value.kind === 'scale' ? 'a scale on the film' : 'the X-ray geometry'];
  });
  const [first, ...others] = new Set(words);
  if (first === undefined) return 'typed measures';
  if (others.length > 0) return [first, ...others].join(' and ');
  return words.length > 1 ? `${first}, both films` : first;
}
