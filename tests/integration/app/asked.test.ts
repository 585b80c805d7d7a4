import { execFile } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { builtFolder } from '../../support/driven-app.ts'

const entries = JSON.parse(readFileSync(new URL('../../../server/entries.json', import.meta.url), 'utf8')) as Record<string, string>
// the worker is started by the store only
const programs = Object.keys(entries).filter((name) => name !== 'storage-worker')

interface Ended {
  status: number
  out: string
  err: string
}

function run(name: string, ...words: string[]): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(process.execPath, [join(builtFolder, 'server', `${name}.js`), ...words], (_, out, err) =>
      resolve({ status: child.exitCode ?? -1, out, err }),
    )
  })
}

test.each(programs)('%s explains itself, and refuses a word that it does not know without a stack trace', async (name) => {
  const [helped, refused] = await Promise.all([run(name, '--help'), run(name, '--nonsense')])
  expect(helped).toMatchObject({ status: 0, err: '' })
  expect(helped.out).toMatch(/npm (start|run)/)
  expect(refused).toMatchObject({ status: 2, out: '' })
  expect(refused.err.split('\n')[0]).toContain("'--nonsense'")
  expect(refused.err).not.toMatch(/ at .*:\d+/)
})
