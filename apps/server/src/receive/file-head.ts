/** What stands before a data set in a DICOM file (PS3.10 section 7.1). The same film always gets the same bytes. */
import { InputError } from '@bonewright/fault';

export interface FileIdentity {
  readonly sopClass: string;
  readonly sopInstance: string;
  readonly syntax: string;
}

/** Drawn once at random for this program (PS3.5 B.2). */
export const IMPLEMENTATION_UID = '2.25.254488202083469824552689690183076666840';
export const IMPLEMENTATION_NAME = 'BONEWRIGHT';
const PREAMBLE_BYTES = 128;

/** Preamble and file meta information. Throws InputError for something that is no UID. */
export function fileHead({ sopClass, sopInstance, syntax }: FileIdentity): Buffer {
  const elements = Buffer.concat([
    element(0x01, 'OB', Buffer.of(0, 1)),
    element(0x02, 'UI', uid(sopClass)),
    element(0x03, 'UI', uid(sopInstance)),
    element(0x10, 'UI', uid(syntax)),
    element(0x12, 'UI', uid(IMPLEMENTATION_UID)),
    element(0x13, 'SH', Buffer.from(IMPLEMENTATION_NAME)),
  ]);
  const length = Buffer.alloc(4);
  length.writeUInt32LE(elements.length);
  return Buffer.concat([Buffer.alloc(PREAMBLE_BYTES), Buffer.from('DICM'), element(0x00, 'UL', length), elements]);
}

/** Group 0002, Explicit VR Little Endian. */
function element(number: number, vr: string, value: Buffer): Buffer {
  const head = Buffer.alloc(vr === 'OB' ? 12 : 8);
  head.writeUInt16LE(2, 0);
  head.writeUInt16LE(number, 2);
  head.write(vr, 4);
  if (vr === 'OB') head.writeUInt32LE(value.length, 8);
  else head.writeUInt16LE(value.length, 6);
  return Buffer.concat([head, value]);
}

function uid(text: string): Buffer {
  if (!/^\d[\d.]{0,63}$/.test(text)) throw new InputError('the machine names the film by something that is no UID');
  return Buffer.from(text.length % 2 === 0 ? text : `${text}\0`);
}
