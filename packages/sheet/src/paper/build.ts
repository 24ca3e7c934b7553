/** Which build made a paper: the commit of the checkout it runs from, and nothing of the machine. */
import { execFileSync } from 'node:child_process';

const HERE = 'packages/sheet/src/paper/';

/** `build 1a2b3c4`; `unknown build` where the program runs from no checkout of its own. */
export const BUILD = buildWords();

function buildWords(): string {
  try {
    const said = execFileSync('git', ['rev-parse', '--show-prefix', '--short', 'HEAD'], {
      cwd: import.meta.dirname,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
      timeout: 2000,
    });
    const [place, commit = ''] = said.split('\n');
    // Anything else is the checkout of whoever installed it.
    return place === HERE && /^[0-9a-f]{7,40}$/.test(commit) ? `build ${commit}` : 'unknown build';
  } catch {
    return 'unknown build';
  }
}
