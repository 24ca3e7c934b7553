/** The command line: one JSON document on standard output, one line of words on standard error for bad input. */
import { faultLine, InputError } from '@bonewright/fault';

type Command = (args: readonly string[]) => Promise<void>;

const COMMANDS: Record<string, () => Promise<{ run: Command }>> = {
  film: () => import('./commands/film.ts'),
  trace: () => import('./commands/trace.ts'),
  align: () => import('./commands/align.ts'),
  frame: () => import('./commands/frame.ts'),
  assess: () => import('./commands/assess.ts'),
  plan: () => import('./commands/plan.ts'),
  sheet: () => import('./commands/sheet.ts'),
  serve: () => import('./commands/serve.ts'),
  backup: () => import('./commands/backup.ts'),
  restore: () => import('./commands/restore.ts'),
  verify: () => import('./commands/verify.ts'),
  'export-case': () => import('./commands/export-case.ts'),
  'import-case': () => import('./commands/import-case.ts'),
  people: () => import('./commands/people.ts'),
};

async function main([name = '', ...args]: readonly string[]): Promise<void> {
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!load) {
    const what = name ? `there is no command "${name}"` : 'no command was given';
    throw new InputError(what, '', `use one of ${Object.keys(COMMANDS).join(', ')}`);
  }
  const { run } = await load();
  await run(args);
}

main(process.argv.slice(2)).catch((error: unknown) => {
  if (error instanceof InputError) {
    process.stderr.write(`error: ${faultLine(error)}\n`);
    process.exitCode = 2;
    return;
  }
  process.stderr.write(
    `error: a fault of Bonewright's own, nothing was changed: ${error instanceof Error ? error.stack : error}\n`,
  );
  process.exitCode = 1;
});
