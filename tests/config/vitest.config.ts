import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/config/built-first.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
  },
})
