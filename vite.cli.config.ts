import { defineConfig } from 'vite';

/** Packages that carry a native part or files of their own, found in node_modules when the program runs. */
const LEFT_OUTSIDE = [
  '@photostructure/sqlite',
  '@myriaddreamin/typst-ts-node-compiler',
  '@expo-google-fonts/ibm-plex-sans',
  '@fontsource/ibm-plex-sans',
];

/** The command line, which holds the server, as plain JavaScript for Node. */
export default defineConfig({
  ssr: { target: 'node', noExternal: true, external: LEFT_OUTSIDE },
  build: {
    ssr: 'packages/cli/src/main.ts',
    outDir: 'dist/cli',
    emptyOutDir: true,
    target: 'node20',
    sourcemap: true,
    minify: false,
    rolldownOptions: {
      output: { format: 'es', entryFileNames: 'evenhand.js', chunkFileNames: '[name]-[hash].js' },
    },
  },
});
