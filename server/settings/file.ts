import { closeSync, copyFileSync, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs'
import { dirname } from 'node:path'
import { migrated } from './migrations.ts'
import { SettingsError } from './problems.ts'
import { settingsSchema, settingsVersion } from './schema.ts'
import type { Settings } from './schema.ts'
import { problemsOf } from './problems.ts'

/** Settings of the file as they stand there, brought to the newest version; empty where there is no file. @throws SettingsError */
export function readSettingsFile(file: string): Record<string, unknown> {
  if (!existsSync(file)) return {}
  let value: unknown
  try {
    value = JSON.parse(readFileSync(file, 'utf8'))
  } catch (problem) {
    throw new SettingsError(file, [{ path: '(file)', what: `is no JSON: ${(problem as Error).message}` }])
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new SettingsError(file, [{ path: '(file)', what: 'must be a JSON object' }])
  }
  const result = migrated(value as Record<string, unknown>)
  if (!result) throw new SettingsError(file, [{ path: 'version', what: `is newer than this program, which knows ${settingsVersion}` }])
  if (result.from < settingsVersion) {
    copyFileSync(file, `${file}.v${result.from}`)
    writeWhole(file, result.settings)
  }
  return result.settings
}

/** Old or new, never half, and new once it returns: written beside, synced, renamed, and the new name synced too. */
export function writeWhole(file: string, settings: unknown): void {
  mkdirSync(dirname(file), { recursive: true })
  const fresh = `${file}.new`
  const handle = openSync(fresh, 'w', 0o600)
  try {
    writeSync(handle, `${JSON.stringify(settings, null, 2)}\n`)
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
  renameSync(fresh, file)
  const folder = openSync(dirname(file), 'r')
  try {
    fsyncSync(folder)
  } finally {
    closeSync(folder)
  }
}

/** @throws SettingsError with every problem at once */
export function checkSettings(from: string, value: unknown): Settings {
  const result = settingsSchema.safeParse(value)
  if (!result.success) throw new SettingsError(from, problemsOf(result.error))
  return result.data
}
