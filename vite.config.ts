// Builds and serves the browser workbook: sources in ui/browser, the built page in dist. Sets the page's content
// security policy, which forbids code made from text, inline scripts and every address but the page's own. Vite, the
// start command and the browser tests read this file.

import { resolve } from 'node:path';
import { defineConfig, normalizePath, type Plugin } from 'vite';
import { offlineParts } from './ui/offline-parts.ts';
import { shipped } from './ui/shipped/licences.ts';

// The grid writes <style> elements into the page and puts this word on them (its option styleNonce; the page tells it
// in <meta property="csp-nonce">). A page without a server of its own cannot make a new word for each visit, so this
// one is no secret: it admits style elements that carry it, never a script and never a style attribute in markup.
const styleNonce = 'dibble-styles';

const policy = [
  "default-src 'self'",
  "script-src 'self'",
  `style-src 'self' 'nonce-${styleNonce}'`,
  // The grid's icons are pictures inside its style sheet.
  "img-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const securityPolicy: Plugin = {
  name: 'security-policy',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: policy }, injectTo: 'head-prepend' },
    { tag: 'meta', attrs: { property: 'csp-nonce', nonce: styleNonce }, injectTo: 'head-prepend' },
  ],
};

const { inPage, inWorkers } = shipped(import.meta.dirname);

// What the page fetches first comes as three files, side by side. Left to itself the build cuts it in as many as there are mixes of
// parts that want it later: seventy small ones, which compress badly and each cost a request.
const firstParts = [
  { name: 'engine', tags: ['$initial' as const], test: within('engine') },
  { name: 'sheets', tags: ['$initial' as const], test: within('sheets-templates') },
  { name: 'page', tags: ['$initial' as const], test: () => true },
];

/** Whether a module stands in a folder of the project. */
function within(folder: string): (module: string) => boolean {
  const start = `${normalizePath(resolve(import.meta.dirname, folder))}/`;
  return (module) => module.startsWith(start);
}

export default defineConfig({
  root: 'ui/browser',
  // Relative addresses: the built folder works wherever it is put.
  base: './',
  plugins: [securityPolicy, inPage, offlineParts(resolve(import.meta.dirname, 'ui/browser/offline/service-worker.ts'))],
  resolve: {
    alias: [
      // What packs and unpacks XLSX files starts no workers of its own (see there).
      { find: /^fflate$/, replacement: resolve(import.meta.dirname, 'ui/xlsx/zip-here.ts') },
      // The functions of former templates come when a workbook calls one.
      {
        find: /^\.\/former-at-hand\.ts$/,
        replacement: resolve(import.meta.dirname, 'engine/functions/former-later.ts'),
      },
    ],
  },
  worker: {
    format: 'es',
    plugins: () => [inWorkers()],
    // What the page fetches later stands in a worker's one file from the start, which is no fault there.
    rolldownOptions: { checks: { ineffectiveDynamicImport: false } },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../../dist',
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    // Nothing is turned into a data: address, which the policy would refuse for a script or a font.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2_000,
    rolldownOptions: { output: { codeSplitting: { groups: firstParts } } },
  },
  server: { host: '127.0.0.1' },
  preview: {
    host: '127.0.0.1',
    port: 4173,
    headers: {
      'Content-Security-Policy': `${policy}; frame-ancestors 'none'`,
      'X-Content-Type-Options': 'nosniff',
      'Referrer-Policy': 'no-referrer',
    },
  },
});
