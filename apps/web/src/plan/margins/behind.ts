/** Evidence behind a margin: the load asked, what the parts are made of, how holes and grip are counted, the limits. */
import type { Case, Construct, LoadName } from '@bonewright/construct';
import { entries } from '@bonewright/evidence';

const LOAD_IDS: Readonly<Record<LoadName, readonly string[]>> = {
  'axial-ball': ['loads.misstep.axial'],
  'axial-guided': ['loads.misstep.axial'],
  'bending-in-plane': ['loads.misstep.bending', 'loads.bending.reference-mass'],
  'bending-out-of-plane': ['loads.misstep.bending', 'loads.bending.reference-mass'],
  torsion: ['loads.misstep.bending', 'loads.torsion.share'],
};
const ALWAYS = ['interface.knock-down', 'bone.yield-strain', 'bone.hole.fifth', 'margin.stop', 'margin.watch'];

const KNOWN: ReadonlySet<string> = new Set(entries.map(({ id }) => id));

/** Ids of entries, each once; materials that only the drawer describes have none. */
export function evidenceBehind({ drawer }: Case, construct: Construct, load: LoadName): string[] {
  const pins = construct.pins.flatMap((pin) => drawer.pins.find(({ id }) => id === pin.drawerId)?.material ?? []);
  const columns = [construct.column]
    .flat()
    .flatMap((choice) => drawer.columns.find(({ id }) => id === choice.drawerId)?.material ?? []);
  const metals = pins.flatMap((name) => [`${name.replace('-', '.')}.yield`, `${name.replace('-', '.')}.fatigue`]);
  const putties = columns.flatMap((name) => [`column.${name}.young`, `column.${name}.strength`]);
  return [...new Set([...LOAD_IDS[load], ...metals, ...putties, ...ALWAYS])].filter((id) => KNOWN.has(id));
}
