import { defineConfig } from 'vitest/config'

const root = new URL('../..', import.meta.url).pathname
const shared = { testTimeout: 30_000, hookTimeout: 60_000, pool: 'forks' as const }

export default defineConfig({
  root,
  test: {
    maxWorkers: 2,
    projects: [
      { root, test: { ...shared, name: 'pure', include: ['tests/{unit,property,golden}/**/*.test.ts'] } },
      {
        root,
        test: {
          ...shared,
          name: 'built',
          include: ['tests/{contract,integration,browser,faults}/**/*.test.ts'],
          globalSetup: ['tests/config/built-first.ts'],
        },
      },
    ],
  },
})
