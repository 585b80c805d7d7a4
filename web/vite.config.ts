import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vite'

export default defineConfig({
  // relative, so that one build is served at `/` and at `/demo/`
  base: './',
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } })],
  build: {
    // field-ui 3: the oldest tablets that Svelte 5 still serves
    target: ['chrome87', 'safari14'],
    // nothing as a data address: the content-security policy allows only what the box serves
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
})
