import { describe, expect, test } from 'vitest';
import { serveArguments } from '../arguments.ts';
import { bestSyntax, isAccepted } from './accepted.ts';

const J = '1.2.840.10008.1.2.4';

describe('what is chosen of what a machine proposes', () => {
  test.each([
    ['without loss before with loss', [`${J}.50`, `${J}.91`, `${J}.70`], `${J}.70`],
    ['plain before compressed', [`${J}.70`, '1.2.840.10008.1.2'], '1.2.840.10008.1.2'],
    ['JPEG lossless of the general kind', ['1.2.3', `${J}.57`], `${J}.57`],
    ['loss where there is nothing else', [`${J}.51`], `${J}.51`],
    ['nothing of what cannot be read', [`${J}.102`, '1.2.3'], null],
  ])('%s', (_what, proposed, best) => {
    expect(bestSyntax(proposed)).toBe(best);
    expect(bestSyntax(proposed.toReversed())).toBe(best);
  });

  test('X-ray pictures, and no reports', () => {
    expect(isAccepted('1.2.840.10008.5.1.4.1.1.1.1')).toBe(true);
    expect(isAccepted('1.2.840.10008.5.1.4.1.1.88.67')).toBe(false);
  });
});

describe('--receive and --aet', () => {
  test('off where they are left out', () => expect(serveArguments([])).not.toHaveProperty('receive'));

  test.each([
    [['--receive', '192.168.1.20:11112'], { address: '192.168.1.20', port: 11112, title: 'BONEWRIGHT' }],
    [['--receive', '[::1]:104', '--aet', 'THEATRE 2'], { address: '::1', port: 104, title: 'THEATRE 2' }],
  ])('%j', (args, receive) => expect(serveArguments(args)).toMatchObject({ receive }));

  test.each([
    [['--receive', '11112'], /not an address and a port/],
    [['--receive', '127.0.0.1:70000'], /not an address and a port/],
    [['--receive', '127.0.0.1:104', '--aet', 'SEVENTEEN LETTERS'], /not a title/],
    [['--receive', '127.0.0.1:104', '--aet', 'A\\B'], /not a title/],
    [['--aet', 'THEATRE'], /without an address/],
  ])('%j is refused in words', (args, words) => expect(() => serveArguments(args)).toThrow(words));
});
