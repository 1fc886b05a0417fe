import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { liteRtLoader } from './scripts/vite/litert-loader.mjs';

/** The page and everything it loads, as plain files that the local server hands out under a strict policy. */
export default defineConfig({
  root: 'packages/app',
  base: '/',
  plugins: [react()],
  worker: { format: 'es', plugins: () => [liteRtLoader()] },
  build: {
    outDir: '../../dist/app',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    // Nothing inline: the page's policy allows files of its own server only, no data: addresses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2_000,
    rolldownOptions: {
      // The second page seeks hands for the command line.
      input: ['packages/app/index.html', 'packages/app/hands.html'],
    },
  },
});
