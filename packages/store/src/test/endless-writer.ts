/** Records one event after another in the folder it is given and says each number once it is acknowledged, until it is killed. */
import { openStore } from '../index.ts';
import { note, opened } from './cases.ts';

const CASE = 'case-aaaa';
const store = await openStore(process.argv[2] ?? '');
let seq = (await store.read(CASE)).length;
while (true) {
  seq += 1;
  await store.append([seq === 1 ? opened(CASE) : note(CASE, seq)]);
  process.stdout.write(`${seq}\n`);
}
