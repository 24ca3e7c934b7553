/** `--receive ADDRESS:PORT --aet TITLE`, read or refused in words. */
import { InputError } from '@bonewright/fault';

export interface ReceiveOptions {
  /** The one address listened on. */
  readonly address: string;
  /** 0: any free port. */
  readonly port: number;
  /** The name the X-ray machine must call (PS3.5 6.2: an AE title). */
  readonly title: string;
}

const TITLE = 'BONEWRIGHT';
const LARGEST_PORT = 65535;

/** Null where receiving was not asked for: it is then off. */
export function receiveOptions(receive: string | undefined, title: string | undefined): ReceiveOptions | null {
  if (receive !== undefined) return { ...place(receive), title: requireTitle(title ?? TITLE) };
  if (title === undefined) return null;
  throw new InputError('a title without an address', '--aet', 'say where to listen: --receive 192.168.1.20:11112');
}

function place(receive: string): { address: string; port: number } {
  const [, bracketed, plain, digits] = /^(?:\[([^\]]+)\]|([^:]+)):(\d{1,5})$/.exec(receive) ?? [];
  const address = bracketed ?? plain;
  const port = Number(digits);
  if (address === undefined || port > LARGEST_PORT)
    throw new InputError(
      `"${receive}" is not an address and a port`,
      '--receive',
      'give this machine’s own address and a port, such as 192.168.1.20:11112',
    );
  return { address, port };
}

function requireTitle(title: string): string {
  if (/^[\x20-\x5b\x5d-\x7e]{1,16}$/.test(title) && title.trim() === title) return title;
  throw new InputError(`"${title}" is not a title`, '--aet', 'give 1 to 16 plain characters, no backslash');
}
