import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vite'

export default defineConfig({
  // relative, so that one build is served at `/` and at `/demo/`
  base: './',
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } })],
  build: {
    // the oldest that draw it: the styles of Svelte 5 need `:where` (Chrome 88), edges by writing direction need Safari 14.1;
    // every tablet with Chrome 87 or Safari 14.0 (field-ui 3) can be brought to these
    target: ['chrome88', 'safari14.1'],
    // nothing as a data address: the content-security policy allows only what the box serves
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
})
