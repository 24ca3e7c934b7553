/** A drawer row of another material: figures that were measured or typed for the one before do not go with it. */
interface Row {
  material: string;
  youngMPa?: number | undefined;
  yieldMPa?: number | undefined;
  youngSdMPa?: number | undefined;
  yieldSdMPa?: number | undefined;
}

const FIGURES = ['youngMPa', 'yieldMPa', 'youngSdMPa', 'yieldSdMPa'] as const;

export function ofMaterial<R extends Row>(row: R, material: string): R {
  const next = { ...row, material };
  for (const figure of FIGURES) delete next[figure];
  return next;
}
