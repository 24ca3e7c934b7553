import { defineConfig } from 'vitest/config';
export default defineConfig({ root: '/work/main', test: { include: ['e2e/src/theatre.test.ts'], testTimeout: 180000, hookTimeout: 300000, provide: { address: 'http://127.0.0.1:5191' } } });
