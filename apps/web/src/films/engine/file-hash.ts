/** The hash that a file is kept by. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** A page that came over plain HTTP from another machine is handed no hashes by its browser: slower there. */
export async function fileHash(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  if (!isSecureContext) return bytesToHex(sha256(bytes));
  return bytesToHex(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)));
}
