/** `npm start`, `npm test`, `npm run bench` on any machine with Node: sets up what is missing, then runs. Plain Node, no dependency. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const [mode = 'start', ...rest] = process.argv.slice(2);
/** What the tests need beside Node, the browser first, the database second: names on PATH, and the Debian package. */
const NEEDED = [
  { names: ['chromium', 'chromium-browser', 'google-chrome'], debian: 'chromium' },
  { names: ['initdb'], debian: 'postgresql' },
  { names: ['pdftoppm'], debian: 'poppler-utils' },
  { names: ['storescu'], debian: 'dcmtk' },
];
const say = (text) => process.stderr.write(`${text}\n`);

refuseOldNode();
install();
const runs = { start, test, check, bench };
if (!runs[mode]) fail(`unknown mode "${mode}": use ${Object.keys(runs).join(', ')}`);
runs[mode]();

function start() {
  buildWeb();
  exec(process.execPath, ['--import', 'tsx', 'apps/server/src/main.ts', ...rest]);
}

function test() {
  check();
  if (rest.length > 0) return exec(bin('vitest'), ['run', ...rest]);
  const [chromium, postgres, ...others] = needPrograms();
  const missing = `${NEEDED.map((n) => n.debian).join(', ')}: not all here`;
  if (process.env.CI && !(chromium && postgres && others.every(Boolean))) fail(`${missing}, so not every test can run`);
  exec(bin('vitest'), ['run', '--project', 'unit'], postgres ? {} : { BONEWRIGHT_NO_POSTGRES: '1' });
  buildWeb();
  const isForBrowser = chromium && others.every(Boolean);
  if (isForBrowser) exec(bin('vitest'), ['run', '--project', 'browser'], { BONEWRIGHT_CHROMIUM: chromium });
  if (isForBrowser && postgres) return;
  const skipped = [isForBrowser ? null : 'the browser tests', postgres ? null : 'the tests on PostgreSQL'];
  say(
    `\n*** SKIPPED: ${skipped.filter(Boolean).join(' and ')} (${missing}). Install them and run npm test again. ***\n`,
  );
}

function check() {
  exec(bin('biome'), ['check', '--error-on-warnings', '.']);
  exec(bin('tsc'), ['-p', '.']);
  exec(process.execPath, ['--import', 'tsx', 'scripts/layers.ts']);
  exec(bin('knip'), []);
}

function bench() {
  exec(process.execPath, ['--import', 'tsx', 'bench/src/main.ts', ...rest]);
}

function refuseOldNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  fail(`Bonewright needs Node 20.19 or newer; this is ${process.versions.node}`);
}

function install() {
  const stamp = join(ROOT, 'node_modules', '.bonewright-stamp');
  const manifests = ['package-lock.json', 'package.json', ...workspaces().map((w) => join(w, 'package.json'))];
  const now = hashFiles(manifests.filter((f) => existsSync(join(ROOT, f)))) + process.version;
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return;
  say('Installing what Bonewright needs (once)...');
  exec('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], {}, 'quiet');
  writeFileSync(stamp, now);
}

function buildWeb() {
  const out = join(ROOT, 'apps/web/dist');
  const stamp = join(out, '.stamp');
  const sources = ['apps/web', ...workspaces().filter((w) => w.startsWith('packages/'))].flatMap((d) => filesBelow(d));
  const now = hashFiles([...sources, 'package-lock.json']);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return;
  say('Building the pages...');
  exec(bin('vite'), ['build', 'apps/web', '--logLevel', 'warn'], {}, 'quiet');
  mkdirSync(out, { recursive: true });
  writeFileSync(stamp, now);
}

function workspaces() {
  const below = (d) => (existsSync(join(ROOT, d)) ? readdirSync(join(ROOT, d)).map((n) => `${d}/${n}`) : []);
  return [...below('packages'), ...below('apps'), 'demo', 'bench', 'e2e'].filter((w) =>
    existsSync(join(ROOT, w, 'package.json')),
  );
}

function filesBelow(dir) {
  return readdirSync(join(ROOT, dir), { withFileTypes: true })
    .filter((e) => !['node_modules', 'dist', 'cases'].includes(e.name) && !e.name.endsWith('.test.ts'))
    .flatMap((e) => (e.isDirectory() ? filesBelow(`${dir}/${e.name}`) : [`${dir}/${e.name}`]))
    .sort();
}

function hashFiles(files) {
  const hash = createHash('sha256');
  for (const f of files)
    hash
      .update(f)
      .update('\0')
      .update(readFileSync(join(ROOT, f)))
      .update('\0');
  return hash.digest('hex');
}

/** Paths of the programs the tests need; on a bare Debian the missing ones are installed by apt, as root only. */
function needPrograms() {
  const found = () => NEEDED.map(({ names }) => names.map(onPath).find(Boolean) ?? null);
  const missing = NEEDED.filter((_, i) => !found()[i]).map(({ debian }) => debian);
  const isRootOnDebian = process.getuid?.() === 0 && onPath('apt-get');
  if (missing.length === 0 || !isRootOnDebian) return found();
  say(`Installing ${missing.join(', ')} from Debian (once)...`);
  const quiet = { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  spawnSync('apt-get', ['update', '-qq'], quiet);
  withoutServices(() => spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...missing], quiet));
  return found();
}

/** Debian starts a service as it installs it, unless this file says not to; the tests start a database of their own. */
function withoutServices(install) {
  const policy = '/usr/sbin/policy-rc.d';
  if (existsSync(policy)) return install();
  writeFileSync(policy, '#!/bin/sh\nexit 101\n', { mode: 0o755 });
  try {
    install();
  } finally {
    rmSync(policy);
  }
}

function onPath(name) {
  // Debian keeps the programs of its database in a folder of their version, off PATH.
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).map((version) => join(debian, version, 'bin')) : [];
  const dirs = [...(process.env.PATH ?? '').split(':'), ...versions];
  return dirs.map((d) => join(d, name)).find((p) => existsSync(p)) ?? null;
}

function bin(name) {
  return join(ROOT, 'node_modules', '.bin', name);
}

function exec(command, args, env = {}, out = 'loud') {
  const stdio = out === 'quiet' ? ['ignore', 'ignore', 'inherit'] : 'inherit';
  const { status, signal } = spawnSync(command, args, { cwd: ROOT, stdio, env: { ...process.env, ...env } });
  if (status !== 0) process.exit(status ?? (signal === 'SIGINT' || signal === 'SIGTERM' ? 0 : 1));
}

function fail(why) {
  say(`error: ${why}`);
  process.exit(1);
}
