import { askedWords } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { marked, shortened } from './marked-words.ts';

test('words that begin so are marked, whatever their accents and capitals; nothing is lost', () => {
  const text = 'Found near Zürich, under brambles.';
  const parts = marked(text, askedWords('zur bram'));
  expect(parts.filter(({ isFound }) => isFound).map(({ part }) => part)).toEqual(['Zürich,', 'brambles.']);
  expect(parts.map(({ part }) => part).join('')).toBe(text);
});

test('a long note is cut to what stands around the word', () => {
  const text = `${'quiet night '.repeat(60)}tetanus ${'quiet night '.repeat(60)}`;
  const short = shortened(text, ['tetanus']);
  expect(short).toContain('tetanus');
  expect(short.length).toBeLessThan(230);
  expect(short.startsWith('… ') && short.endsWith(' …')).toBe(true);
  expect(shortened('a short note', ['note'])).toBe('a short note');
});
