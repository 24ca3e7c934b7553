/** Materials a drawer row can be made of, by the names the case file uses. */
export const PIN_MATERIALS = ['steel-cold-worked', 'steel-annealed', 'steel-spring', 'titanium'] as const;
export const COLUMN_MATERIALS = ['epoxy-putty', 'acrylic', 'dental-acrylic'] as const;

export const MATERIAL_WORDS: Readonly<Record<string, string>> = {
  'steel-cold-worked': 'steel, cold worked',
  'steel-annealed': 'steel, annealed',
  'steel-spring': 'steel, spring temper',
  titanium: 'titanium alloy',
  'epoxy-putty': 'epoxy putty',
  acrylic: 'acrylic cement',
  'dental-acrylic': 'dental acrylic',
};
