/** Builds the pages into `dist`. Nothing is inlined: the content policy allows files of our own origin only. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const SERVER = 'http://127.0.0.1:4180';

// The codecs' glue holds an eval that is never reached: the content policy would refuse it.
const rolldownOptions = { checks: { eval: false, pluginTimings: false } };

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
    rolldownOptions,
  },
  worker: { format: 'es', rolldownOptions },
  server: { proxy: { '/api': SERVER } },
});
