/** The dose papers, made by the server from the record; what they refuse is said in words. */
import { useEffect, useState } from 'react';

type Paper = 'doses' | 'emergency';
const WORDS: Readonly<Record<Paper, string>> = { doses: 'Dose sheet', emergency: 'Emergency sheet' };

export function PrintDoses({ caseId }: { readonly caseId: string }) {
  const [made, setMade] = useState<{ readonly url?: string; readonly says?: string }>({});
  const { url, says } = made;
  useEffect(() => () => (url ? URL.revokeObjectURL(url) : undefined), [url]);
  const print = async (paper: Paper) => {
    setMade({ says: 'drawing the paper' });
    setMade(await asked(caseId, paper));
  };
  return (
    <div className="dose-print">
      {(['doses', 'emergency'] as const).map((paper) => (
        <button key={paper} type="button" className="button" onClick={() => void print(paper)}>
          {WORDS[paper]}
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

async function asked(caseId: string, paper: Paper): Promise<{ readonly url?: string; readonly says?: string }> {
  const east = -new Date().getTimezoneOffset();
  const answer = await fetch(`/api/cases/${caseId}/papers/${paper}?east=${east}`).catch(() => null);
  if (!answer) return { says: 'The server does not answer, so there is no paper yet. The doses are kept.' };
  if (answer.ok) return { url: URL.createObjectURL(await answer.blob()) };
  const said: unknown = await answer.json().catch(() => null);
  const isSaid = typeof said === 'object' && said !== null && 'error' in said && typeof said.error === 'string';
  return { says: `Not printed: ${isSaid ? said.error : `the server answered ${answer.status}`}` };
}
