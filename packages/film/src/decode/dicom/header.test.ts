/** Spacing, grey values and facts of the header; rules from PS3.3, films written here. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { joined } from '../bytes.ts';
import { decodeFilm } from '../decode-film.ts';
import { describeFilm } from '../describe-film.ts';
import { part10, words } from './written-for-tests.ts';

type Changes = Parameters<typeof part10>[0];
const film = (changes: Changes) => decodeFilm(part10(changes), 'film.dcm');

test.each<[string, Changes, object | null]>([
  ['none', {}, null],
  ['of the detector', { ImagerPixelSpacing: '0.1\\0.2' }, { rowMm: 0.1, colMm: 0.2, plane: 'detector' }],
  ['of the scanned film', { NominalScannedPixelSpacing: '0.1\\0.1' }, { rowMm: 0.1, colMm: 0.1, plane: 'detector' }],
  [
    'repeated from the detector',
    { ImagerPixelSpacing: '0.1\\0.1', PixelSpacing: '0.100\\0.100' },
    { rowMm: 0.1, plane: 'detector' },
  ],
  ['corrected', { ImagerPixelSpacing: '0.1\\0.1', PixelSpacing: '0.09\\0.09' }, { rowMm: 0.09, plane: 'patient' }],
  [
    'calibrated by an object',
    { PixelSpacing: '0.09\\0.09', PixelSpacingCalibrationType: 'FIDUCIAL' },
    { rowMm: 0.09, plane: 'patient' },
  ],
  [
    'by an assumed magnification of 1',
    { ImagerPixelSpacing: '0.1\\0.1', PixelSpacing: '0.1\\0.1', PixelSpacingCalibrationType: 'GEOMETRY' },
    { rowMm: 0.1, plane: 'patient' },
  ],
  ['alone in a projection', { Modality: 'DX', PixelSpacing: '0.2\\0.2' }, { rowMm: 0.2, plane: 'unknown' }],
  ['alone in a section', { Modality: 'CT', PixelSpacing: '0.6\\0.6' }, { rowMm: 0.6, plane: 'patient' }],
])('spacing %s, PS3.3 10.7.1', async (_, changes, spacing) => {
  const got = (await film(changes)).spacing;
  if (spacing) expect(got).toMatchObject(spacing);
  else expect(got).toBeNull();
});

test('the basis names the attribute and the kind of calibration', async () => {
  const changes = {
    PixelSpacing: '0.09\\0.09',
    PixelSpacingCalibrationType: 'FIDUCIAL',
    PixelSpacingCalibrationDescription: '25 mm ball',
  };
  expect((await film(changes)).spacing?.basis).toBe(
    'PixelSpacing (0028,0030), calibrated by an object of known size, right at its depth only ("25 mm ball")',
  );
});

test.each(['0\\0', '0.1', '-0.1\\0.1', '0.1\\0.1\\0.1'])(
  'a spacing of %s is set aside, the film is kept',
  async (value) => {
    const { spacing, warnings } = await film({ PixelSpacing: value });
    expect(spacing).toBeNull();
    expect(warnings).toEqual(['PixelSpacing (0028,0030) is not two lengths above 0: it was set aside']);
  },
);

test('junk in numbers that are not needed is set aside with a word, the film is kept', async () => {
  const { grey, warnings } = await film({
    WindowCenter: 'NaN',
    WindowWidth: '400',
    RescaleSlope: '1,5',
    RescaleIntercept: 'Infinity',
  });
  expect(grey).toMatchObject({ slope: 1, intercept: 0, windows: [] });
  expect(warnings).toContain('WindowCenter (0028,1050) holds "NaN", which is no number: it was set aside');
  expect(warnings).toContain('RescaleSlope (0028,1053) holds "1,5", which is no number: it was set aside');
});

test('windows come in the order of the file, with their names; a LINEAR one below width 1 is left out', async () => {
  const { grey } = await film({
    WindowCenter: '2048\\600\\1',
    WindowWidth: '4096\\800\\0',
    WindowCenterWidthExplanation: 'whole\\bone',
  });
  expect(grey.windows).toEqual([
    { centre: 2048, width: 4096, name: 'whole' },
    { centre: 600, width: 800, name: 'bone' },
  ]);
});

test('function, sign and relationship of the values, PS3.3 C.11.2.1.3 and C.8.11.3', async () => {
  const { grey } = await film({
    VOILUTFunction: 'SIGMOID',
    PixelIntensityRelationship: 'LOG',
    PixelIntensityRelationshipSign: words(0xffff),
    PresentationLUTShape: 'INVERSE',
  });
  expect(grey).toMatchObject({
    voiFunction: 'SIGMOID',
    intensityRelationship: 'LOG',
    intensitySign: -1,
    presentationInverse: true,
  });
  expect((await film({})).grey).toMatchObject({
    voiFunction: 'LINEAR',
    intensityRelationship: null,
    intensitySign: null,
  });
});

test('tables of a sequence are read; one whose parts do not fit is set aside', async () => {
  const table = (entries: number) =>
    [
      ['LUTDescriptor', words(entries, 10, 12)],
      ['LUTExplanation', 'hard'],
      ['LUTData', words(0, 2000, 4095, 4095)],
    ] as const;
  const whole = await film({ VOILUTSequence: table(4) });
  expect(whole.grey.voiTables).toEqual([
    { name: 'hard', first: 10, bits: 12, values: Uint16Array.of(0, 2000, 4095, 4095) },
  ]);
  expect(describeFilm(whole).grey.voiTables).toEqual(['hard']);
  const short = await film({ VOILUTSequence: table(400) });
  expect(short.grey.voiTables).toBeUndefined();
  expect(short.warnings).toEqual([
    'LUTDescriptor (0028,3002) and its data do not fit together: the table was set aside',
  ]);
});

test('a modality table counts before a rescale, which the standard forbids beside it', async () => {
  const { grey, warnings } = await film({
    RescaleSlope: '2',
    ModalityLUTSequence: [
      ['LUTDescriptor', words(2, 0, 16)],
      ['LUTData', words(5, 6)],
    ],
  });
  expect(grey.modalityTable?.values).toEqual(Uint16Array.of(5, 6));
  expect(warnings).toEqual(['the file has both a rescale and a modality table: the table counts']);
});

test('species, breed, side and view are given for the user to confirm; names stay out of what is printed', async () => {
  const got = await film({
    PatientName: 'Marl^Rowan',
    ResponsiblePerson: 'Marl^Ash',
    PatientSpeciesCodeSequence: [['CodeMeaning', 'Tawny owl']],
    Laterality: 'L',
    ViewPosition: 'LL',
    StudyDate: '20260203',
  });
  expect(got.header).toEqual({
    patientName: 'Marl^Rowan',
    responsiblePerson: 'Marl^Ash',
    species: 'Tawny owl',
    laterality: 'L',
    viewPosition: 'LL',
    studyDate: '20260203',
  });
  expect(JSON.stringify(describeFilm(got))).not.toContain('Marl');
  expect(describeFilm(got).personalFactsLeftOut).toEqual(['patientName', 'responsiblePerson']);
});

test('what the user must hear before measuring', async () => {
  const { warnings } = await film({
    BurnedInAnnotation: 'YES',
    LossyImageCompression: '01',
    Laterality: 'L',
    ImageLaterality: 'R',
    PatientSpeciesDescription: 'Hedgehog',
    PatientOrientation: 'P\\F',
  });
  expect(warnings).toEqual([
    'the film was compressed with loss: fine detail may be changed',
    'names may be burnt into the picture itself, where no export can take them out',
    'Laterality (0020,0060) and ImageLaterality (0020,0062) disagree: go by the marker on the film',
    'the patient is an animal, the directions in the header are those of a biped: confirm the view',
  ]);
});

test('names in other alphabets are read by the character set the file names', async () => {
  const bytes = (text: string) => new TextEncoder().encode(text);
  expect((await film({ SpecificCharacterSet: 'ISO_IR 192', PatientName: bytes('Жук^Ёж ') })).header.patientName).toBe(
    'Жук^Ёж',
  );
  expect(
    (await film({ SpecificCharacterSet: 'ISO_IR 144', PatientName: Uint8Array.of(0xb6, 0xe3, 0xda, 0x20) })).header
      .patientName,
  ).toBe('Жук');
  expect((await film({ PatientName: Uint8Array.of(0x4d, 0xfc) })).header.patientName).toBe('Mü');
  const coded = [['CodeMeaning', bytes('белка')]] as const;
  expect((await film({ SpecificCharacterSet: 'ISO_IR 192', PatientSpeciesCodeSequence: coded })).header.species).toBe(
    'белка',
  );
});

test('signed 12-bit values keep their sign whether or not the writer filled the upper bits', async () => {
  const got = await film({ PixelRepresentation: 1, PixelData: words(0x0fff, 0xffff, 0x0800, 0xf800, 0x07ff, 0) });
  expect([...got.pixels]).toEqual([-1, -1, -2048, -2048, 2047, 0]);
  expect([got.min, got.max, got.warnings]).toEqual([-2048, 2047, []]);
});

test('colour written plane by plane comes out pixel by pixel', async () => {
  const planes = Uint8Array.of(1, 2, 3, 4, 5, 6, 11, 12, 13, 14, 15, 16, 21, 22, 23, 24, 25, 26);
  const eight = { BitsAllocated: 8, BitsStored: 8, HighBit: 7, SamplesPerPixel: 3, PhotometricInterpretation: 'RGB' };
  const got = await film({ ...eight, PlanarConfiguration: 1, PixelData: planes });
  expect([...got.pixels.subarray(0, 6)]).toEqual([1, 11, 21, 2, 12, 22]);
});

test('padding behind the pixels is left out and told, unless it may be rows the header has lost', async () => {
  const got = await film({ PixelData: words(0, 1, 2, 3, 4, 5, 0, 0) });
  expect([...got.pixels]).toEqual([0, 1, 2, 3, 4, 5]);
  expect(got.warnings).toEqual(['4 bytes after the last pixel were left out']);
  expect((await film({ PixelData: words(0, 1, 2, 3, 4, 5, 0, 0, 0) })).rows).toBe(2);
  await expect(film({ PixelData: words(0, 1, 2, 0, 0, 0, 0, 0, 0) })).rejects.toThrow('its header describes 12');
  await expect(film({ PixelData: words(0, 1, 2, 3, 4, 5, 0, 0, 6) })).rejects.toThrow('its header describes 12');
});

test('a header called explicit but written without its kinds of value is read as what it is', async () => {
  const implicit = readFileSync(new URL('../../../cases/dicom/u12-implicit.dcm', import.meta.url));
  const uid = '1.2.840.10008.1.2';
  const at = implicit.indexOf(`${uid}\0`);
  expect(at).toBeGreaterThan(132);
  const bytes = Uint8Array.from(implicit);
  const longer = joined([
    bytes.subarray(0, at - 2),
    words(20),
    new TextEncoder().encode(`${uid}.1\0`),
    bytes.subarray(at + 18),
  ]);
  const got = await decodeFilm(longer, 'film.dcm');
  expect([got.transferSyntax, got.max]).toEqual([`${uid}.1`, (await decodeFilm(bytes, 'film.dcm')).max]);
  expect(got.warnings).toEqual(['the header is written in another way than it says: implicit VR']);
});
