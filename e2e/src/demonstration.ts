/** The demonstration made anew on the server under test; its films are drawn and measured after the answer. */
const LONGEST_S = 280;

interface Board {
  readonly cases: readonly { readonly caseId: string }[];
  readonly preparing: boolean;
}

/** Resolves when the demonstration is whole, that case in it. */
export async function freshDemonstration(address: string, caseId: string): Promise<void> {
  await fetch(`${address}/api/demo/reset`, { method: 'POST', headers: { origin: address } });
  for (let seconds = 0; seconds < LONGEST_S; seconds += 1) {
    const board = (await (await fetch(`${address}/api/cases`)).json()) as Board;
    if (!board.preparing && board.cases.some((row) => row.caseId === caseId)) return;
    await new Promise((resolve) => setTimeout(resolve, 1000));
  }
  throw new Error('the demonstration was not ready in time');
}
