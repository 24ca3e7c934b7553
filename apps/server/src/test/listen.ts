/** An open page's event stream. */
import { onTestFinished } from 'vitest';

export async function listen(address: string, lastEventId?: string) {
  const left = new AbortController();
  onTestFinished(() => left.abort());
  const headers: Record<string, string> = lastEventId ? { 'last-event-id': lastEventId } : {};
  const response = await fetch(`${address}/api/events`, { headers, signal: left.signal });
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
  let heard = '';
  const until = async (isThere: () => boolean): Promise<void> => {
    while (!isThere()) {
      const { value, done } = await reader.read();
      if (done) throw new Error(`the stream ended after: ${heard}`);
      heard += value;
    }
  };
  const changes = () =>
    [...heard.matchAll(/event: change\ndata: (.*)\n\n/g)].map(([, data]) => JSON.parse(data ?? '').seq);
  await until(() => heard.includes('event: hello'));
  return {
    async changes(count: number): Promise<number[]> {
      await until(() => changes().length >= count);
      return changes();
    },
    async heard(name: string): Promise<boolean> {
      await until(() => heard.includes(`event: ${name}\n`));
      return true;
    },
    lastId: () => [...heard.matchAll(/^id: (\d+)$/gm)].at(-1)?.[1],
    leave: () => left.abort(),
  };
}
