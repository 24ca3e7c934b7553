/** Copies without names of films written by other programs: the same pixels, nothing left of what names somebody. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { joined, latin1 } from './bytes.ts';
import { decodeFilm } from './decode-film.ts';
import { storedBytes } from './describe-film.ts';
import { type Part10, readPart10 } from './dicom/elements.ts';
import { KEPT, KEPT_SEQUENCES } from './dicom/kept-elements.ts';
import { TAGS } from './dicom/tags.ts';
import { element, part10 } from './dicom/written-for-tests.ts';
import { withoutNames } from './without-names.ts';

interface Case {
  readonly file: string;
  readonly facts: { readonly storedPixelsSha256?: string };
}

const folder = new URL('../../cases/dicom/', import.meta.url);
const { files }: { files: Case[] } = JSON.parse(readFileSync(new URL('manifest.json', folder), 'utf8'));

test.each(files)('$file: the pixels hash as before, and no name is left', async ({ file, facts }) => {
  const bytes = readFileSync(new URL(file, folder));
  const copy = withoutNames(bytes);
  const film = await decodeFilm(copy, file);
  const hash = createHash('sha256').update(storedBytes(film)).digest('hex');
  expect(hash).toBe(facts.storedPixelsSha256);
  const before = await decodeFilm(bytes, file);
  expect([film.transferSyntax, film.spacing, film.grey]).toEqual([before.transferSyntax, before.spacing, before.grey]);
  const text = latin1(copy);
  for (const word of ['INVENTED', 'SQUIRREL', 'T-1', '20260101', '2.25.12345', 'PYDICOM', 'OFFIS_DCMTK', 'Exif'])
    expect(text.includes(word), word).toBe(false);
});

/**
 * Attributes that identify patient, owner, staff, place, time or device, as listed in DICOM PS3.15 table E.1-1
 * (2017c): those of its patient, study, series, equipment and request modules.
 */
const BASIC_PROFILE = `
  00080014 00080015 00080018 00080020 00080021 00080022 00080023 00080024 00080025 0008002A 00080030 00080031 00080032
  00080033 00080034 00080035 00080050 00080058 00080080 00080081 00080082 00080090 00080092 00080094 00080096 00080201
  00081010 00081030 0008103E 00081040 00081048 00081049 00081050 00081052 00081060 00081062 00081070 00081072 00081080
  00081084 00081110 00081111 00081120 00081140 00081155 00081195 00082111 00082112 00083010 00084000 00100010 00100020
  00100021 00100030 00100032 00100040 00100050 00100101 00100102 00101000 00101001 00101002 00101005 00101010 00101020
  00101030 00101040 00101050 00101060 00101080 00101081 00101090 00101100 00102000 00102110 00102150 00102152 00102154
  00102155 00102160 00102180 001021A0 001021B0 001021C0 001021D0 001021F0 00102203 00102297 00102299 00104000 00180010
  00181000 00181002 00181004 00181005 00181007 00181008 00181012 00181014 00181030 00181400 00184000 00185011 0018700A
  00189074 00189151 00189424 0018A003 0020000D 0020000E 00200010 00200052 00200200 00203401 00203404 00203406 00204000
  00209158 00209161 00209164 00280303 00281199 00281214 00284000 00320012 00321020 00321021 00321030 00321032 00321033
  00321060 00321066 00321067 00321070 00324000 00380004 00380010 00380011 0038001E 00380020 00380021 00380040 00380050
  00380060 00380061 00380062 00380300 00380400 00380500 00384000 00400001 00400002 00400003 00400004 00400005 00400006
  00400007 0040000B 00400010 00400011 00400012 00400241 00400242 00400243 00400244 00400245 00400248 00400253 00400254
  00400275 00400280 00400555 00401001 00401004 00401005 00401010 00401011 00401101 00401102 00401103 00401400 00402001
  00402008 00402009 00402010 00402016 00402017 00402400 00403001 00404023 00404025 00404027 00404028 00404030 00404034
  00404035 00404036 00404037 0040A027 0040A073 0040A075 0040A078 0040A07A 0040A07C 0040A088 0040A123 0040A124 0040A171
  0040A172 0040A192 0040A193 0040A307 0040A352 0040A353 0040A354 0040A358 0040A402 0040A730 0040DB0C 0040DB0D 00700001
  00700084 00700086 0070031A 00880140 00880200 00880904 00880906 00880910 00880912 04000100 04000402 04000403 04000404
  04000550 04000561 20300020 30060024 300600C2 300A0013 300E0008 40000010 40004000 40080042 40080102 4008010A 4008010B
  4008010C 40080111 40080114 40080115 40080118 40080119 4008011A 40080202 40080300 40084000 FFFAFFFA`
  .trim()
  .toLowerCase()
  .split(/\s+/)
  .map((tag) => `x${tag}`);

test('nothing that is kept stands in the table of what the profile takes out (PS3.15 table E.1-1)', () => {
  const kept = [...KEPT, ...KEPT_SEQUENCES.flatMap(([keyword, inside]) => [keyword, ...inside])];
  expect(kept.map((keyword) => TAGS[keyword]).filter((tag) => BASIC_PROFILE.includes(tag))).toEqual([]);
});

const NAMED = part10({
  SOPClassUID: '1.2.840.10008.5.1.4.1.1.7',
  StudyInstanceUID: '1.2.3',
  PatientName: 'Thornbeck^Hazel',
  ResponsiblePerson: 'Owner^Olive',
  OperatorsName: 'Radio^Ray',
  StudyDescription: 'Hazel of Olive Owner',
  WindowCenterWidthExplanation: 'for Olive',
  ViewPosition: 'CC',
  VOILUTSequence: [
    ['LUTDescriptor', Uint8Array.of(2, 0, 0, 0, 8, 0)],
    ['LUTExplanation', 'as Olive likes it'],
    ['LUTData', Uint8Array.of(0, 1)],
  ],
});

test('names are gone wherever they stood; what is measured by stays; private elements and trailers go', async () => {
  const creator = Uint8Array.of(0x11, 0, 0x10, 0, 0x4c, 0x4f, 4, 0, ...[...'OLIV'].map((c) => c.charCodeAt(0)));
  const at = latin1(NAMED).indexOf(latin1(element('ViewPosition', 'CC').subarray(0, 8)));
  const withPrivate = joined([NAMED.subarray(0, at), creator, NAMED.subarray(at)]);
  const trailer = Uint8Array.of(0xfc, 0xff, 0xfc, 0xff, 0x4f, 0x42, 0, 0, 4, 0, 0, 0, 0x4f, 0x4c, 0x49, 0x56);
  const copy = withoutNames(joined([withPrivate, trailer]));
  expect(latin1(copy)).not.toMatch(/Hazel|Olive|OLIV|Ray/);
  const film = await decodeFilm(copy, 'copy');
  expect(film.header).toEqual({ viewPosition: 'CC' });
  expect(film.grey.voiTables).toHaveLength(1);
  const file: Part10 = readPart10(copy);
  expect(file.elements[TAGS.PatientName]).toMatchObject({ length: 0 });
  expect(latin1(copy)).toContain('YES');
});

test('one study stays one study, under a number that is not its old one', () => {
  const uid = (bytes: Uint8Array) =>
    /2\.25\.\d{20,}/g.exec(latin1(bytes).slice(latin1(bytes).indexOf('\x20\0\x0d\0')))?.[0];
  const [a, b] = ['CC', 'ML'].map((ViewPosition) =>
    uid(withoutNames(part10({ StudyInstanceUID: '1.2.3', ViewPosition }))),
  );
  expect(a).toBeDefined();
  expect(a).toBe(b);
  expect(uid(withoutNames(part10({ StudyInstanceUID: '1.2.4' })))).not.toBe(a);
});

test('what is no film is refused', () => {
  expect(() => withoutNames(Uint8Array.of(1, 2, 3))).toThrow('no DICOM, PNG, TIFF or JPEG');
});
