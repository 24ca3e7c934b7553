import { defineConfig } from 'vitest/config';
const [file, from, to] = (process.env.SAB ?? '').split('@@');
export default defineConfig({ plugins: [{ name: 'sab', enforce: 'pre', transform(code: string, id: string) { if (!file || !id.endsWith(file!)) return; if (!code.includes(from!)) throw new Error('nothing to sabotage'); return code.replace(from!, to!); } }], test: { include: ['packages/construct/src/as-placed/*.test.ts'] } });
