/** The checksums in a ZIP's own list of files (central directory, 4.3.12 to 4.3.16 of the ZIP application note 6.3.10). */

const END = { signature: 0x06054b50, bytes: 22, list: 16 };
const END_64 = { locatorBytes: 20, locatorSignature: 0x07064b50, record: 8, list: 48 };
const FILE = { signature: 0x02014b50, bytes: 46, crc: 16, nameLength: 28, extraLength: 30, commentLength: 32 };
const IN_ZIP64 = 0xffffffff;

/** CRC-32 of the file at `index` in the list; null where the list cannot be read so far. */
export function listedCrc(bytes: Uint8Array, index: number): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = listOffset(view);
  for (let i = 0; at !== null && at + FILE.bytes <= bytes.length; i++) {
    if (view.getUint32(at, true) !== FILE.signature) return null;
    if (i === index) return view.getUint32(at + FILE.crc, true);
    at +=
      FILE.bytes +
      view.getUint16(at + FILE.nameLength, true) +
      view.getUint16(at + FILE.extraLength, true) +
      view.getUint16(at + FILE.commentLength, true);
  }
  return null;
}

function listOffset(view: DataView): number | null {
  let end = view.byteLength - END.bytes;
  while (end >= 0 && view.getUint32(end, true) !== END.signature) end--;
  if (end < 0) return null;
  const offset = view.getUint32(end + END.list, true);
  if (offset !== IN_ZIP64) return offset;
  const locator = end - END_64.locatorBytes;
  if (locator < 0 || view.getUint32(locator, true) !== END_64.locatorSignature) return null;
  const record = Number(view.getBigUint64(locator + END_64.record, true));
  return record + END_64.list + 8 <= view.byteLength ? Number(view.getBigUint64(record + END_64.list, true)) : null;
}
