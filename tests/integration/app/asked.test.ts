import { execFile } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { builtFolder } from '../../support/driven-app.ts'

const entries = JSON.parse(readFileSync(new URL('../../../server/entries.json', import.meta.url), 'utf8')) as Record<string, string>
const { scripts } = JSON.parse(readFileSync(new URL('../../../package.json', import.meta.url), 'utf8')) as {
  scripts: Record<string, string>
}
/** Checks and benches; the stages of `npm test` take no words, and the bench of the alarms hands its own on. */
const ofTests = Object.entries(scripts).flatMap(([name, script]) => {
  const file = /^node (tests\/\S+)$/.exec(script)?.[1]
  return file === undefined || /stages\/run|bench\/alarms/.test(file) ? [] : [[name, file] as const]
})
// the worker is started by the store only
const programs = Object.keys(entries).filter((name) => name !== 'storage-worker')

interface Ended {
  status: number
  out: string
  err: string
}

function run(file: string, ...words: string[]): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(process.execPath, [file, ...words], (_, out, err) => resolve({ status: child.exitCode ?? -1, out, err }))
  })
}

test.each(programs)('%s explains itself, and refuses a word that it does not know without a stack trace', async (name) => {
  const file = join(builtFolder, 'server', `${name}.js`)
  const [helped, refused] = await Promise.all([run(file, '--help'), run(file, '--nonsense')])
  expect(helped).toMatchObject({ status: 0, err: '' })
  expect(helped.out).toMatch(/npm (start|run)/)
  expect(refused).toMatchObject({ status: 2, out: '' })
  expect(refused.err.split('\n')[0]).toContain("'--nonsense'")
  expect(refused.err).not.toMatch(/ at .*:\d+/)
})

test.each(ofTests)('npm run %s explains itself, and runs nothing on a word that it does not know', async (name, file) => {
  const [helped, refused] = await Promise.all([run(file, '--help'), run(file, '--nonsense')])
  expect(helped).toMatchObject({ status: 0, err: '' })
  expect(helped.out).toContain(`npm run ${name}`)
  expect(refused).toEqual({ status: 2, out: '', err: "'--nonsense' is no word of this program: see --help\n" })
})

test('the column refuses a check that it does not have', async () => {
  const { status, out, err } = await run('tests/support/tables/column.mjs', 'securty')
  expect({ status, out }).toEqual({ status: 2, out: '' })
  expect(err).toContain("'securty' is no check of the column: security,")
})
