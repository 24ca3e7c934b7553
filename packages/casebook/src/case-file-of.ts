/** The case as mechanics needs it, made from the record; or what is still missing, in words. */
import { type Case, caseFileSchema } from '@bonewright/construct';
import type { CaseState } from './case-state.ts';

export type CaseFileOf =
  | { readonly caseFile: Case; readonly missing: readonly [] }
  | { readonly caseFile: null; readonly missing: readonly string[] };

/** Everything `assess` and `plan` read. `missing` holds one sentence for each thing that is not yet in the record. */
export function caseFileOf(state: CaseState): CaseFileOf {
  const missing = missingWords(state);
  if (missing.length > 0) return { caseFile: null, missing };
  const parsed = caseFileSchema.safeParse(assembled(state));
  if (parsed.success) return { caseFile: parsed.data, missing: [] };
  return {
    caseFile: null,
    missing: parsed.error.issues.map((i) => `What is recorded cannot be used: ${i.path.join('.')}, ${i.message}.`),
  };
}

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

function assembled({ patient, bone, fracture, keepOut, corridors, softTissueMm, drawer, construct }: CaseState) {
  const { species, massG, ageClass, bone: name, side } = patient?.value ?? {};
  return {
    patient: { species, massG, ageClass },
    bone: { name, side, lengthMm: bone?.value.bone.lengthMm.value, stations: bone?.value.bone.stations },
    fracture: fracture?.value,
    keepOut: keepOut?.value,
    corridors: corridors?.value,
    softTissueMm: softTissueMm?.value,
    drawer: drawer?.value,
    construct: construct?.value.construct,
  };
}
