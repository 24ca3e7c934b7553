/** The case as mechanics needs it, made from the record; or what is still missing, in words. */
import { type Case, readCase } from '@bonewright/construct';
import { faultLine, InputError } from '@bonewright/fault';
import type { CaseState } from './case-state.ts';

export type CaseFileOf =
  | { readonly caseFile: Case; readonly missing: readonly [] }
  | { readonly caseFile: null; readonly missing: readonly string[] };

/**
 * Everything `assess` and `plan` read. `missing` holds one sentence for each thing that is not yet in the record.
 * A chosen construct that no longer fits the bone or the drawer is left out, so that plans can still be ranked.
 */
export function caseFileOf(state: CaseState): CaseFileOf {
  const missing = missingWords(state);
  if (missing.length > 0) return { caseFile: null, missing };
  const whole = readOrFault(assembled(state));
  const read =
    whole instanceof InputError && isOf('construct', whole)
      ? readOrFault(assembled({ ...state, construct: null }))
      : whole;
  if (!(read instanceof InputError)) return { caseFile: read, missing: [] };
  return { caseFile: null, missing: [`What is recorded cannot be used: ${faultLine(read)}.`] };
}

function readOrFault(value: unknown): Case | InputError {
  try {
    return readCase(value);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

const isOf = (part: string, { path }: InputError): boolean => path === part || path.startsWith(`${part}.`);

function missingWords({ patient, bone, fracture, drawer }: CaseState): string[] {
  const words: string[] = [];
  if (!patient) words.push('The case has not been opened.');
  else if (patient.value.massG === null) words.push('The patient has not been weighed.');
  if (!bone) words.push('The bone has not been measured: trace two films and join them.');
  else if (bone.value.bone.lengthMm.value === null)
    words.push(`The length of the bone is not measured: ${bone.value.bone.lengthMm.why ?? 'its ends are not seen'}.`);
  if (!fracture) words.push('The fracture has not been described: say how wide its gap will be.');
  if (!drawer) words.push('The drawer is empty: say which pins and which putty there are.');
  return words;
}

function assembled({
  patient,
  bone,
  reduction,
  fracture,
  keepOut,
  corridors,
  softTissueMm,
  drawer,
  construct,
}: CaseState) {
  const { species, massG, ageClass, bone: name, side } = patient?.value ?? {};
  const planned = reduction?.value.bone ?? bone?.value.bone;
  return {
    patient: { species, massG, ageClass },
    bone: { name, side, lengthMm: planned?.lengthMm.value, stations: planned?.stations },
    fracture: fracture?.value,
    keepOut: keepOut?.value,
    corridors: corridors?.value,
    softTissueMm: softTissueMm?.value,
    drawer: drawer?.value,
    construct: construct?.value.construct,
  };
}
