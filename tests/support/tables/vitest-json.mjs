import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Runs some test files. @returns each test's name, how it ended and how long it took, and the lines that the tests wrote themselves */
export function runTests(files, env = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'table-'))
  const out = join(folder, 'result.json')
  const args = ['vitest', 'run', '--config', 'tests/config/vitest.config.ts', '--reporter', 'json', '--reporter', 'default']
  const run = spawnSync('npx', [...args, '--outputFile', out, ...files], {
    env: { ...process.env, ...env },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  })
  try {
    const { testResults } = JSON.parse(readFileSync(out, 'utf8'))
    const tests = testResults.flatMap(({ name, assertionResults, message }) =>
      assertionResults.length === 0
        ? [{ file: name, fullName: name, title: name, status: 'failed', seconds: 0, why: message }]
        : assertionResults.map(({ fullName, title, status, duration, failureMessages }) => ({
            file: name,
            fullName,
            title,
            status,
            seconds: (duration ?? 0) / 1000,
            why: failureMessages?.[0]?.split('\n')[0] ?? '',
          })),
    )
    return { tests, said: run.stdout, status: run.status }
  } catch {
    process.stderr.write(`${run.stdout}\n${run.stderr}\n`)
    return { tests: [], said: '', status: 1 }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
