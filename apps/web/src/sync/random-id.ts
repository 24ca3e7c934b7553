/** Ids that need no server and no secure page. */
import { ID_BYTES, idFrom } from '@bonewright/casebook';

export const randomId = (): string => idFrom(crypto.getRandomValues(new Uint8Array(ID_BYTES)));
