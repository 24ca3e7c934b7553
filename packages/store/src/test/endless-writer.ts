/** Records one event after another in the folder it is given and says each number once it is acknowledged, until it is killed. */
import { openStore } from '../index.ts';
import { note, opened } from './cases.ts';

const [dir = '', caseId = ''] = process.argv.slice(2);
const store = await openStore(dir);
let seq = (await store.read(caseId)).length;
while (true) {
  seq += 1;
  await store.append([seq === 1 ? opened(caseId) : note(caseId, seq)]);
  process.stdout.write(`${seq}\n`);
}
