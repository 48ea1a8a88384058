import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

/** The modules that the entry needs before it can draw, as one chunk: a start asks for one script and one sheet of styles. */
function atStart(id: string, { getModuleIds, getModuleInfo }: ChunkMeta): string | undefined {
  started ??= reached([...getModuleIds()].filter((one) => getModuleInfo(one)?.isEntry), (one) => getModuleInfo(one)?.importedIds ?? []);
  return started.has(id) ? 'index' : undefined;
}

interface ChunkMeta {
  getModuleIds(): IterableIterator<string>;
  getModuleInfo(id: string): { isEntry: boolean; importedIds: readonly string[] } | null;
}

let started: Set<string> | undefined;

function reached(from: string[], next: (id: string) => readonly string[]): Set<string> {
  const seen = new Set(from);
  // A set that is gone through also gives what is added meanwhile.
  for (const id of seen) next(id).forEach((one) => seen.add(one));
  return seen;
}

export default defineConfig({
  plugins: [svelte()],
  clearScreen: false,
  // The catalogue stands beside the core that uses the same words.
  server: { port: 1420, strictPort: true, fs: { allow: ['..'] } },
  // Nothing inline: the page's content policy allows only its own files.
  build: { target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false }, rollupOptions: { output: { manualChunks: atStart } } },
  test: { include: ['src/**/*.test.ts'], setupFiles: ['src/lib/words.setup.ts'], environment: 'node' },
});
