import { join } from 'node:path'
import { checkSettings, readSettingsFile } from './file.ts'
import { given, strangersIn } from './flags.ts'
import type { Given } from './flags.ts'
import { SettingsError } from './problems.ts'
import type { Settings } from './schema.ts'

export interface Loaded {
  settings: Settings
  /** What flags and environment fixed for this run: a change on the page does not reach these. */
  fixed: string[]
  file: string
  data: string
  wants: Pick<Given, 'printConfig' | 'help' | 'version' | 'restore' | 'hostSound'>
}

/** Flags before environment before file before defaults. @throws SettingsError with every problem at once */
export function loadSettings(argv: readonly string[], environment: Readonly<Record<string, string | undefined>>): Loaded {
  const { settings, data, config, ...wants } = read(argv, environment)
  const file = config ?? join(data, 'settings.json')
  if (wants.help || wants.version) return { settings: checkSettings('', {}), fixed: [], file, data, wants }
  const strangers = strangersIn(environment)
  if (strangers.length > 0) {
    const problems = strangers.map((path) => ({ path, what: 'is no setting' }))
    throw new SettingsError('environment', problems)
  }
  const inFile = readSettingsFile(file)
  checkSettings(file, inFile)
  return { settings: checkSettings('flags and environment', { ...inFile, ...settings }), fixed: Object.keys(settings), file, data, wants }
}

function read(argv: readonly string[], environment: Readonly<Record<string, string | undefined>>): Given {
  try {
    return given(argv, environment)
  } catch (problem) {
    throw new SettingsError('flags', [{ path: '', what: (problem as Error).message }])
  }
}
