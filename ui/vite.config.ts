import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [svelte()],
  clearScreen: false,
  // The catalogue stands beside the core that uses the same words.
  server: { port: 1420, strictPort: true, fs: { allow: ['..'] } },
  // Nothing inline: the page's content policy allows only its own files.
  build: { target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  test: { include: ['src/**/*.test.ts'], setupFiles: ['src/lib/words.setup.ts'], environment: 'node' },
});
