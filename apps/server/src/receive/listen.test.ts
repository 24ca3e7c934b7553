import { once } from 'node:events';
import { createServer, type Server } from 'node:net';
import { InputError } from '@bonewright/fault';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { serve } from '../serve.ts';
import { freshFolder } from '../test/served.ts';

const title = 'THEATRE';

async function taken(): Promise<{ other: Server; port: number }> {
  const other = createServer().listen(0, '127.0.0.1');
  onTestFinished(() => void other.close());
  await once(other, 'listening');
  const place = other.address();
  return { other, port: typeof place === 'object' && place ? place.port : 0 };
}

function start(port: number, receive: { address: string; port: number }): Promise<unknown> {
  return serve({ port, dataDir: freshFolder(), isEmptyWanted: true, receive: { ...receive, title } });
}

describe('the server does not start, and says why,', () => {
  test('where the port to receive at is taken', async () => {
    const { port } = await taken();
    await expect(start(0, { address: '127.0.0.1', port })).rejects.toThrow(/port \d+ is taken by another program/);
  });

  test('where the address is not its own (192.0.2.0/24 is nobody’s: RFC 5737)', async () => {
    const started = start(0, { address: '192.0.2.7', port: 0 });
    await expect(started).rejects.toThrow(InputError);
    await expect(started).rejects.toThrow(/not an address of this machine/);
  });

  test('where the port of the pages is taken; the one to receive at is free again', async () => {
    const log = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    onTestFinished(() => log.mockRestore());
    const pages = await taken();
    const { other, port } = await taken();
    await new Promise((closed) => other.close(closed));
    await expect(start(pages.port, { address: '127.0.0.1', port })).rejects.toThrow(/port \d+ is taken/);
    const again = createServer().listen(port, '127.0.0.1');
    await once(again, 'listening');
    again.close();
  });
});
