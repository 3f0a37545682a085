import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** Where the server listens while the pages are developed with `npx vite`. */
const SERVER = process.env.VAPORWRIGHT_SERVER ?? 'http://127.0.0.1:4870';

/** Answers that are kept for reading without a server: jobs that were opened, never what changes or streams. */
const READABLE_OFFLINE =
  /\/api\/v1\/(jobs(\?[^/]*)?|jobs\/[^/?]+|jobs\/[^/?]+\/(history|work|recordings\/[^/]+\/(preview|samples)(\?.*)?)|settings|session)$/;

/** Writes .br and .gz beside each file of text, so that the server need not pack them with every request. */
function packed(): Plugin {
  let folder = '';
  return {
    name: 'packed',
    apply: 'build',
    enforce: 'post',
    configResolved: ({ root, build }) => {
      // Built aside and moved into place when it is whole: not always the usual folder.
      folder = resolve(root, build.outDir);
    },
    closeBundle: {
      order: 'post',
      sequential: true,
      handler() {
        for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
          if (!/\.(js|css|html|svg|webmanifest)$/.test(name)) continue;
          const bytes = readFileSync(join(folder, name));
          writeFileSync(join(folder, `${name}.br`), brotliCompressSync(bytes));
          writeFileSync(join(folder, `${name}.gz`), gzipSync(bytes, { level: 9 }));
        }
      },
    },
  };
}

export default defineConfig({
  root: 'src/web',
  // Built files are asked for from any route, so from the root of the server.
  base: '/',
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    // The fonts and worker files stay files: a strict content policy has no data: sources for them.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
  },
  worker: { format: 'es' },
  server: { proxy: { '/api/v1': { target: SERVER, changeOrigin: false } } },
  plugins: [
    react(),
    VitePWA({
      strategies: 'generateSW',
      registerType: 'autoUpdate',
      // Registered by src/web/offline/service-worker.ts; an injected script would be an inline one.
      injectRegister: null,
      includeAssets: ['icon.svg', 'icon-192.png', 'icon-512.png'],
      manifest: {
        name: 'Vaporwright',
        short_name: 'Vaporwright',
        description: 'From complaint to hand-over for the fuel-vapour side of petrol cars',
        start_url: '/',
        display: 'standalone',
        background_color: '#fbfaf5',
        theme_color: '#fbfaf5',
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,woff2,svg,png}'],
        maximumFileSizeToCacheInBytes: 4 * 1024 * 1024,
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/api\//, /^\/openapi/],
        runtimeCaching: [
          {
            urlPattern: READABLE_OFFLINE,
            method: 'GET',
            handler: 'NetworkFirst',
            options: {
              cacheName: 'opened-jobs',
              // Only answers with what was asked for; a refusal must not hide what can be read.
              cacheableResponse: { statuses: [200] },
              expiration: { maxEntries: 400 },
            },
          },
        ],
      },
    }),
    packed(),
  ],
});
