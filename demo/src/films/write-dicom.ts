/** A film as an X-ray machine's file: DICOM part 10, explicit little endian, digital X-ray image for presentation. */
import type { GreyImage } from '@bonewright/film';

/** What the header says beside the pixels. */
export interface FilmHeader {
  readonly patientName: string;
  readonly patientId: string;
  readonly species: string;
  readonly organization: string;
  readonly institution: string;
  readonly bodyPart: string;
  readonly laterality: 'L' | 'R';
  readonly viewPosition: string;
  readonly date: string;
  readonly time: string;
  readonly imagerPixelSpacingMm: number;
  readonly sourceToDetectorMm: number;
  readonly bitsStored: number;
  readonly window: { readonly centre: number; readonly width: number };
  /** Distinguishes this film's identifiers from all others; digits only. */
  readonly serial: string;
}

const EXPLICIT_LITTLE_ENDIAN = '1.2.840.10008.1.2.1';
const DX_FOR_PRESENTATION = '1.2.840.10008.5.1.4.1.1.1.1';
/** Value representations whose length takes four bytes. */
const LONG = new Set(['OB', 'OW', 'SQ', 'UN', 'UT']);

type Element = readonly [group: number, element: number, vr: string, value: Uint8Array];

/** The whole file. 16 bits allocated; the image must hold unsigned 16-bit values. */
export function writeDicom(image: GreyImage, header: FilmHeader): Uint8Array {
  const uid = (branch: number) => `2.25.${branch}${header.serial}`;
  const meta: Element[] = [
    [0x0002, 0x0001, 'OB', Uint8Array.of(0, 1)],
    [0x0002, 0x0002, 'UI', uidBytes(DX_FOR_PRESENTATION)],
    [0x0002, 0x0003, 'UI', uidBytes(uid(1))],
    [0x0002, 0x0010, 'UI', uidBytes(EXPLICIT_LITTLE_ENDIAN)],
    [0x0002, 0x0012, 'UI', uidBytes(uid(9))],
  ];
  const metaBytes = joined(meta.map(encoded));
  const length = encoded([0x0002, 0x0000, 'UL', number32(metaBytes.length)]);
  const preamble = new Uint8Array(132);
  preamble.set(text('DICM'), 128);
  return joined([preamble, length, metaBytes, ...dataSet(image, header, uid).map(encoded)]);
}

function dataSet(image: GreyImage, h: FilmHeader, uid: (branch: number) => string): Element[] {
  const us = (v: number) => Uint8Array.of(v & 255, v >> 8);
  const spacing = `${h.imagerPixelSpacingMm}\\${h.imagerPixelSpacingMm}`;
  const { pixels, grey } = image;
  const isInverted = image.photometric === 'MONOCHROME1';
  return [
    [0x0008, 0x0005, 'CS', text('ISO_IR 192')],
    [0x0008, 0x0008, 'CS', text('ORIGINAL\\PRIMARY')],
    [0x0008, 0x0016, 'UI', uidBytes(DX_FOR_PRESENTATION)],
    [0x0008, 0x0018, 'UI', uidBytes(uid(1))],
    [0x0008, 0x0020, 'DA', text(h.date)],
    [0x0008, 0x0030, 'TM', text(h.time)],
    [0x0008, 0x0050, 'SH', text('')],
    [0x0008, 0x0060, 'CS', text('DX')],
    [0x0008, 0x0068, 'CS', text('FOR PRESENTATION')],
    [0x0008, 0x0080, 'LO', text(h.institution)],
    [0x0010, 0x0010, 'PN', text(h.patientName)],
    [0x0010, 0x0020, 'LO', text(h.patientId)],
    [0x0010, 0x0030, 'DA', text('')],
    [0x0010, 0x0040, 'CS', text('')],
    [0x0010, 0x2201, 'LO', text(h.species)],
    [0x0010, 0x2299, 'LO', text(h.organization)],
    [0x0018, 0x0015, 'CS', text(h.bodyPart)],
    [0x0018, 0x0060, 'DS', text('50')],
    [0x0018, 0x1110, 'DS', text(String(h.sourceToDetectorMm))],
    [0x0018, 0x1164, 'DS', text(spacing)],
    [0x0018, 0x5101, 'CS', text(h.viewPosition)],
    [0x0020, 0x000d, 'UI', uidBytes(uid(2))],
    [0x0020, 0x000e, 'UI', uidBytes(uid(3))],
    [0x0020, 0x0013, 'IS', text('1')],
    [0x0020, 0x0062, 'CS', text(h.laterality)],
    [0x0028, 0x0002, 'US', us(1)],
    [0x0028, 0x0004, 'CS', text(image.photometric)],
    [0x0028, 0x0010, 'US', us(image.rows)],
    [0x0028, 0x0011, 'US', us(image.cols)],
    [0x0028, 0x0100, 'US', us(16)],
    [0x0028, 0x0101, 'US', us(h.bitsStored)],
    [0x0028, 0x0102, 'US', us(h.bitsStored - 1)],
    [0x0028, 0x0103, 'US', us(0)],
    [0x0028, 0x1040, 'CS', text(grey?.intensityRelationship ?? '')],
    [0x0028, 0x1041, 'SS', us((grey?.intensitySign ?? -1) & 0xffff)],
    [0x0028, 0x1050, 'DS', text(String(h.window.centre))],
    [0x0028, 0x1051, 'DS', text(String(h.window.width))],
    [0x0028, 0x1052, 'DS', text('0')],
    [0x0028, 0x1053, 'DS', text('1')],
    [0x2050, 0x0020, 'CS', text(isInverted ? 'INVERSE' : 'IDENTITY')],
    [0x7fe0, 0x0010, 'OW', words(pixels)],
  ];
}

function encoded([group, element, vr, value]: Element): Uint8Array {
  const isLong = LONG.has(vr);
  const odd = value.length % 2;
  const size = value.length + odd;
  const head = new DataView(new ArrayBuffer(isLong ? 12 : 8));
  head.setUint16(0, group, true);
  head.setUint16(2, element, true);
  head.setUint8(4, vr.charCodeAt(0));
  head.setUint8(5, vr.charCodeAt(1));
  if (isLong) head.setUint32(8, size, true);
  else head.setUint16(6, size, true);
  // texts are padded with a space, everything else with a zero
  const padding = odd === 0 ? [] : [Uint8Array.of(['UI', 'OB'].includes(vr) ? 0 : 32)];
  return joined([new Uint8Array(head.buffer), value, ...padding]);
}

const text = (t: string): Uint8Array => new TextEncoder().encode(t);
const uidBytes = text;

function number32(v: number): Uint8Array {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setUint32(0, v, true);
  return bytes;
}

function words(pixels: GreyImage['pixels']): Uint8Array {
  const bytes = new Uint8Array(2 * pixels.length);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < pixels.length; i++) view.setUint16(2 * i, pixels[i]!, true);
  return bytes;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const p of parts) {
    out.set(p, at);
    at += p.length;
  }
  return out;
}
