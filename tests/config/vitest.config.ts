import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'
import { NotChecked } from './not-checked.ts'

const root = new URL('../..', import.meta.url).pathname
// state classes of the page (`*.svelte.ts`) are tested as they are
const plugins = [svelte({ configFile: false })]
/** Minutes, or what only root may do: made by `npm run faults`, which sets this. */
const long = process.env['LONG'] === undefined ? ['tests/faults/long/**'] : []
/** Of the others, those that look at a page. */
const withPages = ['tests/integration/app/demo.test.ts', 'tests/integration/app/page.test.ts', 'tests/integration/security/box.test.ts']
// against what hangs only: how long a test may take is no check of it, and a busy machine takes ten times as long
const shared = { testTimeout: 600_000, hookTimeout: 600_000, pool: 'forks' as const, expect: { poll: { timeout: 30_000 } } }

export default defineConfig({
  root,
  test: {
    // two more than the cores of the smallest machine: many tests wait for clocks, buzzers and pages
    maxWorkers: 4,
    reporters: ['default', new NotChecked()],
    projects: [
      // pure functions leave nothing behind: a process for each file would cost more than the tests
      { root, plugins, test: { ...shared, name: 'pure', isolate: false, include: ['tests/{unit,property,golden}/**/*.test.ts'] } },
      {
        root,
        plugins,
        test: {
          ...shared,
          name: 'built',
          // each stops what it started; what must not share a process is a program of its own
          isolate: false,
          include: ['tests/{contract,integration,faults}/**/*.test.ts'],
          exclude: [...long, ...withPages],
          globalSetup: ['tests/config/built-first.ts'],
        },
      },
      {
        root,
        plugins,
        test: {
          ...shared,
          name: 'pages',
          isolate: false,
          include: ['tests/browser/**/*.test.ts', ...withPages],
          globalSetup: ['tests/config/built-first.ts', 'tests/config/browser-first.ts'],
        },
      },
    ],
  },
})
