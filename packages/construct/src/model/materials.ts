/** What pins and columns are made of, from the evidence; a drawer entry's own figures go before the registry's. */
import { entries, value } from '@bonewright/evidence';

export interface Material {
  /** `steel.cold-worked` and the like: the root of its evidence ids. */
  readonly youngId: string;
  readonly yieldId: string;
  readonly poissonId: string;
  readonly densityId: string;
  /** Level part of the stress-life line and where the line starts; null for what is moulded. */
  readonly fatigue: { readonly levelId: string; readonly ultimateId: string } | null;
  readonly moulded: boolean;
}

const metal = (family: string, temper: string): Material => ({
  youngId: `${family}.young`,
  poissonId: `${family}.poisson`,
  densityId: `${family}.density`,
  yieldId: `${temper}.yield`,
  fatigue: { levelId: `${temper}.fatigue`, ultimateId: `${temper}.ultimate` },
  moulded: false,
});

const moulded = (name: string, density: string): Material => ({
  youngId: `column.${name}.young`,
  poissonId: 'column.poisson',
  densityId: `column.${density}.density`,
  yieldId: `column.${name}.strength`,
  fatigue: null,
  moulded: true,
});

const MATERIALS: Readonly<Record<string, Material>> = {
  'steel-cold-worked': metal('steel', 'steel.cold-worked'),
  'steel-annealed': metal('steel', 'steel.annealed'),
  'steel-spring': metal('steel', 'steel.spring'),
  titanium: metal('titanium', 'titanium'),
  'epoxy-putty': moulded('epoxy-putty', 'epoxy-putty'),
  acrylic: moulded('acrylic', 'acrylic'),
  'dental-acrylic': moulded('dental-acrylic', 'acrylic'),
};

export const hasMaterial = (name: string): boolean => Object.hasOwn(MATERIALS, name);
export const knownMaterials = (): readonly string[] => Object.keys(MATERIALS);

/** The figures of a drawer material; one that only the drawer describes counts as cold-worked steel in the rest. */
export function materialOf(name: string, use: 'metal' | 'moulded'): Material {
  const known = hasMaterial(name) ? MATERIALS[name] : undefined;
  return known ?? MATERIALS[use === 'metal' ? 'steel-cold-worked' : 'epoxy-putty']!;
}

const NEEDLE_GAUGES = new Set(
  entries.flatMap(({ id }) => (id.startsWith('needle.') ? [Number(id.split('.')[1])] : [])),
);

/** Nominal outer and inner diameter of needle tubing in mm; null for a gauge without figures. */
export function needleSize(gauge: number): { outerMm: number; innerMm: number } | null {
  if (!NEEDLE_GAUGES.has(gauge)) return null;
  return { outerMm: value(`needle.${gauge}.outer`), innerMm: value(`needle.${gauge}.inner`) };
}
