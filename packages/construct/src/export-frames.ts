/** The frame behind each figure, at the middle values, in the format of the frame solver. */
import type { FrameModel } from '@bonewright/frame';
import type { Case, Construct } from './model/case-file.ts';
import { checkConstruct } from './model/case-rules.ts';
import { nominalFigures } from './model/figures.ts';
import { eachLoad, type LoadName } from './model/plan.ts';
import { frameModel } from './to-frame/build.ts';
import { layOut } from './to-frame/layout.ts';
import { meshOf } from './to-frame/mesh.ts';

const SOURCE = 'Bonewright, middle values. x runs distally along the bone, y medially, z cranially; mm, N, MPa.';

/** One model for each load, its one load case named after it. Throws InputError for a construct that cannot be. */
export function exportFrames(patientCase: Case, construct: Construct): Readonly<Record<LoadName, FrameModel>> {
  checkConstruct(patientCase, construct, 'construct');
  const figures = nominalFigures(patientCase, construct);
  const layout = layOut(patientCase, construct, figures);
  const mesh = meshOf(patientCase, construct, figures, layout);
  const model = (load: LoadName): FrameModel => ({
    title: `${patientCase.patient.species} ${patientCase.bone.name}, ${load}`,
    source: SOURCE,
    ...frameModel(patientCase, mesh, layout, figures, [load]),
  });
  return eachLoad(model);
}
