/** `export-case NUMBER --data DIR -o FILE.zip`: one case as a file for another practice; names of people are in it. */
import { InputError } from '@bonewright/fault';
import { writeBundle } from '@bonewright/server';
import { openExistingStore } from '@bonewright/store';
import { userPath, writeBytes } from '../files.ts';
import { print } from '../output.ts';
import { parsedArguments } from '../parsed-arguments.ts';

const USAGE = 'export-case NUMBER --data DIR -o FILE.zip';
const OPTIONS = {
  data: { type: 'string' },
  database: { type: 'string' },
  output: { type: 'string', short: 'o' },
} as const;

export async function run(args: readonly string[]): Promise<void> {
  const { values, positionals } = parsedArguments(args, OPTIONS, USAGE);
  const [wanted, tooMuch] = positionals;
  if (!wanted || !values.output || tooMuch !== undefined)
    throw new InputError('say which case, and the file to write', '', `use: ${USAGE}`);
  if (!values.data) throw new InputError('no data folder was given', '--data', `use: ${USAGE}`);
  const file = userPath(values.output);
  const database = values.database ?? process.env.BONEWRIGHT_DATABASE ?? null;
  const store = await openExistingStore(userPath(values.data), database);
  try {
    const rows = await store.list();
    const row = rows.find(({ caseId, number }) => caseId === wanted || number === wanted);
    if (!row) throw new InputError(`there is no case ${wanted}`, '', 'give its number as the board shows it');
    const chunks: Uint8Array[] = [];
    for await (const chunk of await writeBundle(store, row.caseId, new Date())) chunks.push(chunk);
    writeBytes(file, Buffer.concat(chunks));
    print({ file, caseId: row.caseId, events: row.seq });
  } finally {
    await store.close();
  }
}
