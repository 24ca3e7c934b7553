export * from './admission/alternatives.ts';
export * from './admission/beside-case.ts';
export * from './blood/blood-loss.ts';
export * from './chart/lanes.ts';
export * from './chart/sitting.ts';
export * from './chart/warmth.ts';
export * from './checks/checklists.ts';
export * from './condition/condition-index.ts';
export { dosePerKg, strengthPerMl } from './doses/amount.ts';
export { type LocalTotal, localEarlier, localTotal } from './doses/checks/local-anaesthetic.ts';
export { hasMassMoved, isOfToday } from './doses/checks/mass.ts';
export { limitFor } from './doses/checks/volume.ts';
export {
  checkChoice,
  choiceRemarks,
  chosenFor,
  type FormularyChoice,
  formularyChoiceSchema,
} from './doses/choice.ts';
export { DOSE_UNITS, type DoseLine, doseLineSchema, STRENGTH_UNITS } from './doses/dose-line.ts';
export { plain, spelled, unitWords } from './doses/figure-words.ts';
export type { DoseContext, EarlierDose } from './doses/given.ts';
export { type Judged, judgeDose } from './doses/judge.ts';
export { animalsOf, type Relation, speciesName } from './doses/patient-kind.ts';
export { publishedFor, type Shown } from './doses/published.ts';
export {
  REGISTER_KINDS,
  type RegisterEntry,
  type RegisterKind,
  registerEntrySchema,
  type SignedEntry,
} from './doses/register/register-entry.ts';
export { type RegisterPage, type RegisterRow, registerRows } from './doses/register/register-rows.ts';
export { type Needs, type Remark, rangeWords } from './doses/remark.ts';
export { doEqualVolumesReverse, type Reversal, reversalsOf } from './doses/reversal.ts';
export { type Answers, type SignedDose, signDose, signedDoseSchema } from './doses/sign.ts';
export { partsThatHelp, type Recipe, type Worked, workOut } from './doses/work-out.ts';
export * from './energy/energy.ts';
export * from './fluids/fluid-plan.ts';
export type { Frozen } from './frozen.ts';
export { dayAt, hoursBetween, minutesAt } from './moments/moment.ts';
export * from './pin-sites/scales.ts';
export * from './release/after-frame.ts';
export * from './release/breeding.ts';
export * from './release/limits.ts';
export * from './release/readiness.ts';
export * from './sun/sun.ts';
