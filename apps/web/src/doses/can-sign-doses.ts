/** Who may write and sign doses: a vet, or whoever sits at a machine without accounts. The server asks the same again. */
import { mayRecord } from '@bonewright/casebook';
import { useSession } from '../sync/session.ts';

export function useCanSignDoses(): boolean {
  const { person } = useSession();
  return person === null || mayRecord(person.role, 'dose-signed');
}

/** Who may give what was signed. */
export function useCanGiveDoses(): boolean {
  const { person } = useSession();
  return person === null || mayRecord(person.role, 'dose-given');
}
