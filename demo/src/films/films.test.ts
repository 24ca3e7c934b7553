import { decodeFilm, greyImage, traceFilm } from '@bonewright/film';
import { describe, expect, test } from 'vitest';
import { limbs } from './bones.ts';
import { filmsOf } from './index.ts';

const limb = limbs.find((l) => l.key === 'squirrel')!;
const [craniocaudal, mediolateral] = filmsOf('squirrel');

describe('the squirrel’s two films', () => {
  test('are read as an X-ray machine’s files, pixel for pixel', async () => {
    for (const { bytes, image } of [craniocaudal!, mediolateral!]) {
      const film = await decodeFilm(bytes, 'film.dcm');
      expect(film.format).toBe('dicom');
      expect([film.rows, film.cols, film.bitsStored]).toEqual([image.rows, image.cols, 14]);
      expect(greyImage(film).pixels).toEqual(image.pixels);
      expect(film.spacing).toMatchObject({ rowMm: limb.pitchMm, plane: 'detector' });
      expect(film.warnings).toEqual([]);
    }
  });

  test('are the same every time', () => {
    expect(filmsOf('squirrel')[0]!.bytes).toEqual(craniocaudal!.bytes);
  });

  test.each([
    ['craniocaudal', craniocaudal!, 0],
    ['mediolateral', mediolateral!, 1],
  ] as const)('%s: the trace finds the scale, the bend and the shaft that were drawn', (_, film, k) => {
    const trace = traceFilm(film.image, film.request);
    const truly = (limb.pitchMm * (1000 - limb.heightMm)) / 1000;
    // the limit for a ball's scale
    expect(Math.abs(trace.mmPerPixel.value! / truly - 1)).toBeLessThan(0.007);
    // drawn between the fragments' own frames; the bow of each turns its least-squares line by up to 3 degrees
    expect(Math.abs(Math.abs(trace.angulationDeg.value!) - Math.abs(limb.turnDeg[k]))).toBeLessThan(4);
    const shaft = trace.segments[0]!.stations.at(-6)!.outerMm.value!;
    // near the fracture the shaft has nearly its size at the origin; its ellipse is turned a little
    expect(Math.abs(shaft / (2 * [limb.bone.a, limb.bone.b][k]!) - 1)).toBeLessThan(0.04);
  });
});
