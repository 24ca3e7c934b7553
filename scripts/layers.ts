/**
 * Holds the arrows of the architecture: a workspace may list as dependencies only the workspaces below it.
 * With Biome's noUndeclaredDependencies (nothing unlisted is imported) that makes the layer table true.
 * Pure packages also may not reach for what Biome does not see: Math.random, globalThis.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ALLOWED: Record<string, readonly string[]> = {
  'packages/fault': [],
  'packages/evidence': ['fault'],
  'packages/film': ['evidence', 'fault'],
  'packages/bone': ['evidence', 'fault'],
  'packages/frame': ['fault'],
  'packages/construct': ['bone', 'frame', 'evidence', 'fault'],
  'packages/ward': ['evidence', 'fault'],
  'packages/casebook': ['construct', 'ward', 'fault'],
  'packages/store': ['casebook', 'fault'],
  'packages/sheet': ['construct', 'ward', 'casebook', 'evidence', 'bone', 'fault'],
};
const PURE = ['fault', 'evidence', 'bone', 'frame', 'construct', 'ward', 'casebook'].map((p) => `packages/${p}`);
const IMPURE = [/\bMath\.random\b/, /\bglobalThis\b/, /\bnew Date\b/, /\bperformance\.now\b/];

/** The broken rules of the checkout at `root`, a line each. */
export function brokenLayers(root: string): string[] {
  return [...Object.keys(ALLOWED).flatMap((w) => brokenImports(root, w)), ...PURE.flatMap((w) => impurities(root, w))];
}

function brokenImports(root: string, workspace: string): string[] {
  const manifest = JSON.parse(readFileSync(join(root, workspace, 'package.json'), 'utf8')) as Record<string, object>;
  const named = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies });
  return named
    .filter((d) => d.startsWith('@bonewright/'))
    .map((d) => d.slice('@bonewright/'.length))
    .filter((d) => !ALLOWED[workspace]?.includes(d))
    .map((d) => `${workspace} may not import ${d}`);
}

function impurities(root: string, workspace: string): string[] {
  return sources(join(root, workspace, 'src')).flatMap((file) =>
    IMPURE.filter((pattern) => pattern.test(readFileSync(file, 'utf8'))).map(
      (pattern) => `${file.slice(root.length + 1)} uses ${pattern.source.replaceAll('\\b', '').replace('\\', '')}`,
    ),
  );
}

function sources(dir: string): string[] {
  if (!existsSync(dir)) return [];
  return readdirSync(dir, { withFileTypes: true }).flatMap((e) => {
    const path = join(dir, e.name);
    if (e.isDirectory()) return sources(path);
    return /\.tsx?$/.test(e.name) && !/\.(test|generated)\.ts$/.test(e.name) ? [path] : [];
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const broken = brokenLayers(join(dirname(fileURLToPath(import.meta.url)), '..'));
  for (const line of broken) console.error(`layers: ${line}`);
  process.exit(broken.length === 0 ? 0 : 1);
}
