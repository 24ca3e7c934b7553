/** The process that `kills.ts` kills: four cases at once, batches of one to five notes; says each number once it is acknowledged. */
import { type CaseEvent, checkEvent } from '@bonewright/casebook';
import { openStore } from '@bonewright/store';

const AT = '2026-11-25T23:10:00Z';
const [dir = '', database = ''] = process.argv.slice(2);
const store = await openStore(dir, database || null);
await Promise.all(['case-kill-1', 'case-kill-2', 'case-kill-3', 'case-kill-4'].map(write));

async function write(caseId: string): Promise<void> {
  let seq = (await store.read(caseId)).length;
  for (let turn = 0; ; turn++) {
    const batch = Array.from({ length: 1 + (turn % 5) }, (_, i) => event(caseId, seq + 1 + i));
    ({ seq } = await store.append(batch));
    process.stdout.write(`${caseId} ${seq}\n`);
  }
}

function event(caseId: string, seq: number): CaseEvent {
  const head = { schema: 1, id: `${caseId}-${seq}`, caseId, seq, at: AT, by: 'R. Fenn' };
  if (seq > 1) return checkEvent({ ...head, kind: 'note-added', payload: { text: `note ${seq}`, stage: null } });
  const patient = { species: 'hare', name: '', massG: 3100, weighedAt: AT, ageClass: 'adult', sex: 'unknown' };
  return checkEvent({
    ...head,
    kind: 'case-opened',
    payload: { number: '26-1', ...patient, bone: 'tibia', side: 'left' },
  });
}
