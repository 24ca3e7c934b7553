import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sectionOf } from './theory-section.ts';

test('the theory page has the section that a margin opens, and nothing of the next', () => {
  const page = readFileSync(join(import.meta.dirname, '../../../../../docs/theory/construct.md'), 'utf8');
  const section = sectionOf(page, 'Strength');
  expect(section).toContain('Buckling');
  expect(section).not.toMatch(/## |---|\*\*/);
  expect(sectionOf(page, 'No such heading')).toBe('');
});
