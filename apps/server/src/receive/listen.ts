/** Listens for X-ray machines on one address and no other. Loaded only where receiving is switched on. */
import { once } from 'node:events';
import { type AddressInfo, createServer, type Socket } from 'node:net';
import { InputError } from '@bonewright/fault';
import dimse from 'dcmjs-dimse';
import { IMPLEMENTATION_NAME, IMPLEMENTATION_UID } from './file-head.ts';
import { FilmAssociation, type FilmDesk } from './film-association.ts';
import type { ReceiveOptions } from './receive-options.ts';

export interface Listening {
  readonly port: number;
  /** Ends every connection; a film that was not whole is gone. */
  close(): Promise<void>;
}

const MOST_CONNECTIONS = 8;

/** Throws InputError where the address or port cannot be used. */
export async function listen({ address, port }: ReceiveOptions, desk: FilmDesk): Promise<Listening> {
  // The library would print what machines say of themselves and of films.
  dimse.log.setLevel('silent');
  dimse.Implementation.setImplementationClassUid(IMPLEMENTATION_UID);
  dimse.Implementation.setImplementationVersion(IMPLEMENTATION_NAME);
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
    new FilmAssociation(socket, desk);
  });
  server.maxConnections = MOST_CONNECTIONS;
  server.listen(port, address);
  await once(server, 'listening').catch((error: unknown) => refusePlace(error, address, port));
  server.on('error', (error) => desk.say(`a machine could not be let in: ${error.name}`));
  return {
    port: portOf(server.address()),
    async close() {
      for (const socket of sockets) socket.destroy();
      await new Promise((closed) => server.close(closed));
    },
  };
}

function portOf(place: AddressInfo | string | null): number {
  if (place === null || typeof place === 'string') throw new Error('the receiver has no port');
  return place.port;
}

function refusePlace(error: unknown, address: string, port: number): never {
  const code = error instanceof Error && 'code' in error ? error.code : '';
  if (code === 'EADDRINUSE')
    throw new InputError(`port ${port} is taken by another program`, '--receive', 'give another port');
  if (code === 'EACCES') throw new InputError(`port ${port} is not for everybody`, '--receive', 'use one above 1024');
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    throw new InputError(`${address} is not an address of this machine`, '--receive', 'give one of its own');
  throw error;
}
