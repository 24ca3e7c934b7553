/** Papers of a case, made by the server from the record; what they refuse is said in words. */
import { holds, THIS_MACHINE } from '@bonewright/casebook';
import { useEffect, useState } from 'react';
import { useRole } from '../sync/session.ts';

interface PrintPapersProps {
  readonly caseId: string;
  readonly papers: readonly (readonly [name: string, word: string])[];
}

type Made = { readonly url?: string; readonly says?: string };

export function PrintPapers({ caseId, papers }: PrintPapersProps) {
  const role = useRole();
  const [made, setMade] = useState<Made>({});
  const { url, says } = made;
  useEffect(() => () => (url ? URL.revokeObjectURL(url) : undefined), [url]);
  if (!holds({ ...THIS_MACHINE, role, isOwner: false }, 'print papers')) return null;
  const print = async (paper: string) => {
    setMade({ says: 'drawing the paper' });
    setMade(await asked(caseId, paper));
  };
  return (
    <div className="print-papers">
      {papers.map(([name, word]) => (
        <button key={name} type="button" className="button" onClick={() => void print(name)}>
          {word}
        </button>
      ))}
      <p role="status">
        {says}
        {url && (
          <a href={url} target="_blank" rel="noreferrer">
            Open the paper
          </a>
        )}
      </p>
    </div>
  );
}

async function asked(caseId: string, paper: string): Promise<Made> {
  const east = -new Date().getTimezoneOffset();
  const answer = await fetch(`/api/cases/${caseId}/papers/${paper}?east=${east}`).catch(() => null);
  if (!answer) return { says: 'The server does not answer, so there is no paper yet. The record is kept.' };
  if (answer.ok) return { url: URL.createObjectURL(await answer.blob()) };
  const said: unknown = await answer.json().catch(() => null);
  const isSaid = typeof said === 'object' && said !== null && 'error' in said && typeof said.error === 'string';
  return { says: `Not printed: ${isSaid ? said.error : `the server answered ${answer.status}`}` };
}
