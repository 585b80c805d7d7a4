import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'

const root = new URL('../..', import.meta.url).pathname
// state classes of the page (`*.svelte.ts`) are tested as they are
const plugins = [svelte({ configFile: false })]
/** Minutes, or what only root may do: made by `npm run faults`, which sets this. */
const long = process.env['LONG'] === undefined ? ['tests/faults/long/**'] : []
const shared = { testTimeout: 30_000, hookTimeout: 60_000, pool: 'forks' as const }

export default defineConfig({
  root,
  test: {
    maxWorkers: 2,
    projects: [
      { root, plugins, test: { ...shared, name: 'pure', include: ['tests/{unit,property,golden}/**/*.test.ts'] } },
      {
        root,
        plugins,
        test: {
          ...shared,
          name: 'built',
          include: ['tests/{contract,integration,browser,faults}/**/*.test.ts'],
          exclude: long,
          globalSetup: ['tests/config/built-first.ts'],
        },
      },
    ],
  },
})
