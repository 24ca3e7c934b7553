/**
 * Compiles kernel.ts to WebAssembly and writes it as base64 to src/solve/kernel.generated.ts, so that it loads without a
 * file or a fetch. Run: node packages/frame/kernel/build.mjs
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

/** The generated module's text. */
export async function buildKernel() {
  let binary = new Uint8Array();
  const options = '-O3 --converge --noAssert --runtime stub --importMemory --noExportMemory --enable simd';
  const { error, stderr } = await asc.main(['kernel.ts', '--outFile', 'kernel.wasm', ...options.split(' ')], {
    readFile: (name) => (name === 'kernel.ts' ? readFileSync(here('kernel.ts'), 'utf8') : null),
    writeFile: (name, contents) => {
      if (name === 'kernel.wasm') binary = contents;
    },
    listFiles: () => [],
  });
  if (error) throw new Error(`${error.message}\n${stderr.toString()}`);
  const base64 = Buffer.from(binary).toString('base64');
  return `/** Built from kernel/kernel.ts by kernel/build.mjs; do not edit. */\nexport const KERNEL_BASE64 =\n  '${base64}';\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(here('../src/solve/kernel.generated.ts'), await buildKernel());
}
