/** `sheet CASE.json -o FILE.pdf`: a paper of the case's construct, or without one of the best plan. */
import { basename } from 'node:path';
import { assess, type Case, type Plan, rank, readCase } from '@bonewright/construct';
import { InputError } from '@bonewright/fault';
import { PAPER_NAMES, PAPERS, type PageSize } from '@bonewright/sheet';
import manifest from '../../package.json' with { type: 'json' };
import { userPath, writeBytes } from '../files.ts';
import { fileArgument, naming, readInput } from '../input-file.ts';
import { print } from '../output.ts';
import { parsedArguments } from '../parsed-arguments.ts';

const USAGE = 'sheet CASE.json -o FILE.pdf [--size A4|Letter] [--paper theatre|report|implants]';
const OPTIONS = {
  output: { type: 'string', short: 'o' },
  size: { type: 'string', default: 'A4' },
  paper: { type: 'string', default: 'theatre' },
} as const;
const SIZES: Record<string, PageSize> = { a4: 'A4', letter: 'Letter' };

export async function run(args: readonly string[]): Promise<void> {
  const { file, out, size, paper } = sheetArguments(args);
  const patientCase = readInput(file, readCase);
  const plan = naming(file, () => planOf(patientCase));
  const pdf = await paper({
    patientCase,
    plan,
    title: {
      patient: basename(file, '.json'),
      lengthsFrom: 'the case file',
      version: manifest.version,
      made: new Date(),
      size,
    },
  });
  writeBytes(out, pdf);
  print({ file: out, bytes: pdf.byteLength, plan: plan.label, verdict: plan.verdict });
}

function planOf(patientCase: Case): Plan {
  if (patientCase.construct) return assess(patientCase);
  const { plans, nearest } = rank(patientCase);
  const best = plans[0];
  if (best) return best;
  throw new InputError(
    `nothing in the drawer can do it: ${nearest ?? 'no plan was found'}`,
    'drawer',
    'add to the drawer',
  );
}

function sheetArguments(args: readonly string[]) {
  const { values, positionals } = parsedArguments(args, OPTIONS, USAGE);
  if (!values.output) throw new InputError('no output file was given', '', `use: ${USAGE}`);
  const size = SIZES[values.size.toLowerCase()];
  if (!size) throw new InputError(`the page size "${values.size}" is unknown`, '--size', 'use A4 or Letter');
  const name = PAPER_NAMES.find((paper) => paper === values.paper);
  if (!name)
    throw new InputError(`there is no paper "${values.paper}"`, '--paper', `use one of ${PAPER_NAMES.join(', ')}`);
  return { file: fileArgument(positionals, USAGE), out: userPath(values.output), size, paper: PAPERS[name] };
}
