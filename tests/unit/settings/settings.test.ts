import { mkdtempSync, readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { defaultLimits } from '../../../server/contract/fold.ts'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import { helpText } from '../../../server/settings/flags.ts'
import { kilnConfigOf } from '../../../server/settings/kiln.ts'
import { loadSettings } from '../../../server/settings/load.ts'
import { SettingsError } from '../../../server/settings/problems.ts'
import { settingsForm, settingsSchema } from '../../../server/settings/schema.ts'

function folder(settings?: unknown): string {
  const path = mkdtempSync(join(tmpdir(), 'settings-'))
  if (settings !== undefined) writeFileSync(join(path, 'settings.json'), typeof settings === 'string' ? settings : JSON.stringify(settings))
  return path
}
const load = (settings?: unknown, argv: string[] = [], env = {}) => loadSettings(['--data', folder(settings), ...argv], env)
function problems(run: () => unknown): string[] {
  try {
    run()
  } catch (problem) {
    if (problem instanceof SettingsError) return problem.message.split('\n')
    throw problem
  }
  return []
}

describe('settings', () => {
  test('are whole without any file, and the kiln is the usual drum', () => {
    const { settings } = load()
    expect(settings).toMatchObject({ port: 8420, mqttPort: 1883, site: 'yard', root: 'firing', broker: null, viewersWithoutLogin: false })
    expect(settings.kilns.map(kilnConfigOf)).toEqual([defaultKilnConfig()])
    expect(settings.kilns[0]?.limits).toEqual(defaultLimits)
  })

  test('come from flags before the environment before the file before the defaults', () => {
    const file = { version: 1, port: 1, mqttPort: 2, site: 'file', root: 'file' }
    const { settings, fixed } = load(file, ['--port', '4'], { KILN_PORT: '3', KILN_SITE: 'env' })
    expect(settings).toMatchObject({ port: 4, mqttPort: 2, site: 'env', root: 'file', logLevel: 'info' })
    expect(fixed.sort()).toEqual(['port', 'site'])
  })

  test('all problems are told at once, unknown keys with their path', () => {
    const found = problems(() =>
      load({ version: 1, prot: 1, port: 70000, kilns: [{ volumeL: 1, limits: { smokeStart: 80 }, roles: { 'yard/n1/x': 'door' } }] }),
    )
    expect(found).toHaveLength(5)
    for (const path of [
      'prot: is no setting',
      'port: ',
      'kilns.0.volumeL: ',
      'kilns.0.limits.smokeStart: is no setting',
      'kilns.0.roles.yard/n1/x: ',
    ]) {
      expect(
        found.some((line) => line.includes(path)),
        path,
      ).toBe(true)
    }
  })

  test.each([
    ['an unknown flag', () => load(undefined, ['--prot', '1'])],
    ['a word for a number', () => load(undefined, ['--port', 'eighty'])],
    ['a stray word', () => load(undefined, ['fast'])],
    ['a file that is no JSON', () => load('{')],
    ['a file that is a list', () => load('[]')],
    ['a file of a later version', () => load({ version: 99 })],
    ['two kilns with one name', () => load({ version: 1, kilns: [{ kiln: 'a' }, { kiln: 'a' }] })],
  ])('refuse %s', (_, run) => {
    expect(problems(run).length).toBeGreaterThan(0)
  })

  test('names of the environment that look like ours and are none are refused, each by its name; the help comes all the same', () => {
    const env = { KILN_PORT: '3', KILN_PROT: '4', KILN_: '', PATH: '/bin', XKILN_SITE: 'hill' }
    expect(problems(() => load(undefined, [], env))).toEqual(['environment: KILN_PROT: is no setting', 'environment: KILN_: is no setting'])
    expect(load(undefined, ['--help'], env).wants.help).toBe(true)
    expect(load(undefined, [], { KILN_PORT: '3', HOME: '/' }).settings.port).toBe(3)
  })

  test('a file written by hand is brought to the newest version, the old one kept beside it', () => {
    const path = folder({ site: 'hill' })
    expect(loadSettings(['--data', path], {}).settings.site).toBe('hill')
    expect(JSON.parse(readFileSync(join(path, 'settings.json'), 'utf8'))).toEqual({ version: 1, site: 'hill' })
    expect(readdirSync(path).sort()).toEqual(['settings.json', 'settings.json.v0'])
  })

  test('what --print-config prints is itself a settings file', () => {
    const { settings } = load({ version: 1, site: 'hill' })
    expect(settingsSchema.parse(JSON.parse(JSON.stringify(settings)))).toEqual(settings)
  })

  test('the help states every flag and what counts before what', () => {
    for (const word of [
      '--port',
      '--mqtt-port',
      '--data',
      '--host',
      '--site',
      '--root',
      '--config',
      '--log-level',
      '--broker',
      '--print-config',
      '--help',
      '--version',
      'counts before',
    ]) {
      expect(helpText()).toContain(word)
    }
  })

  test('the form says of every limit its unit, default, bounds, what it does and its source', () => {
    const form = settingsForm() as { properties: { kilns: { items: { properties: { limits: { properties: Record<string, object> } } } } } }
    const limits = form.properties.kilns.items.properties.limits.properties
    expect(Object.keys(limits).sort()).toEqual(Object.keys(defaultLimits).sort())
    for (const [name, limit] of Object.entries(limits)) {
      expect(limit, name).toMatchObject({ type: 'number', default: defaultLimits[name as keyof typeof defaultLimits] })
      for (const word of ['minimum', 'maximum', 'unit', 'description', 'source']) expect(limit, `${name} ${word}`).toHaveProperty(word)
    }
  })
})
