import { accessSync, constants, existsSync, mkdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { createSecureContext } from 'node:tls'
import { pino } from 'pino'
import { createApp } from './app.ts'
import { greeting } from './greeting.ts'
import { helpText } from './settings/flags.ts'
import { loadSettings } from './settings/load.ts'
import type { Loaded } from './settings/load.ts'
import { SettingsError } from './settings/problems.ts'
import { startProblem } from './start-problem.ts'
import { createSqliteStore } from './storage/sqlite/store.ts'

// this file is bundled to .build/app/server/main.js
const built = fileURLToPath(new URL('..', import.meta.url))
const root = join(built, '..', '..')

function end(text: string, status: number): never {
  if (status === 0) process.stdout.write(`${text}\n`)
  else process.stderr.write(`${text}\n`)
  process.exit(status)
}

function load(): Loaded {
  try {
    return loadSettings(process.argv.slice(2), process.env)
  } catch (problem) {
    if (problem instanceof SettingsError) return end(problem.message, 2)
    return end(`The settings file cannot be read: ${(problem as Error).message}`, 2)
  }
}

/** Parents first; Node's own recursive form never comes back where a parent refuses children, as below /proc. */
function makeFolder(path: string): void {
  if (existsSync(path)) return
  makeFolder(dirname(path))
  mkdirSync(path, { mode: 0o700 })
}

async function restore(backup: string): Promise<never> {
  const { restoreBackup } = await import('./storage/sqlite/restore.ts')
  try {
    const aside = restoreBackup(resolve(backup), resolve(data), Date.now())
    return end(`The backup is in its place.${aside === null ? '' : ` What stood there before: ${aside}`}`, 0)
  } catch (problem) {
    const inUse = (problem as { code?: string }).code === 'in-use'
    return end(`Nothing was changed: ${(problem as Error).message}`, inUse ? 3 : 6)
  }
}

const { settings, fixed, file, data, wants } = load()
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }
if (wants.help) end(helpText(), 0)
if (wants.version) end(version, 0)
if (wants.printConfig) end(JSON.stringify(settings, null, 2), 0)

// what is written belongs to this user alone (reliability 6, S35)
process.umask(0o077)
try {
  makeFolder(resolve(data))
  accessSync(data, constants.W_OK)
} catch (problem) {
  end(`The data folder ${data} cannot be written (${(problem as NodeJS.ErrnoException).code ?? 'unknown'}).`, 5)
}

if (statSync(data).mode & 0o002) end(`Everybody may write to the data folder ${data}: chmod o-w ${data}`, 5)
if (wants.restore !== null) await restore(wants.restore)

/** @returns the whole path, so that no search path decides what is run */
function hostSound(): string | null {
  if (wants.hostSound === null) return null
  const program = resolve(wants.hostSound)
  try {
    if (!statSync(program).isFile()) end(`The program of --host-sound is no file: ${program}`, 2)
    accessSync(program, constants.X_OK)
    return program
  } catch (problem) {
    return end(`The program of --host-sound cannot be run: ${program} (${(problem as NodeJS.ErrnoException).code ?? 'unknown'})`, 2)
  }
}

function certificate(): { cert: string; key: string } | null {
  const { certificate: file, certificateKey: keyFile } = settings
  if (file === null && keyFile === null) return null
  try {
    const pair = { cert: readFileSync(file ?? '', 'utf8'), key: readFileSync(keyFile ?? '', 'utf8') }
    createSecureContext(pair)
    return pair
  } catch (problem) {
    return end(`The certificate and its key cannot be used (settings "certificate" and "certificateKey"): ${(problem as Error).message}`, 2)
  }
}

// the terminal may go away in the middle of a firing: the kiln does not
const destination = pino.destination(2)
destination.on('error', () => {})
for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {})
process.on('SIGHUP', () => {})

const log = pino({ level: settings.logLevel, base: null }, destination)
// what nobody expected leaves the program in a state that nobody knows: it ends at once, and whoever supervises it starts it again
process.on('uncaughtException', (error) => {
  log.fatal({ error: { message: error.message, stack: error.stack } }, 'an unexpected failure')
  process.exit(70)
})
const app = createApp({
  settings,
  fixed,
  settingsFile: file,
  tls: certificate(),
  hostSound: hostSound(),
  store: createSqliteStore({ folder: data, log }),
  pageFolder: join(built, 'web'),
  demoFolder: join(root, 'server', 'simulator', 'demo'),
  version,
  log,
})

/** Before the addresses are told: who reads them may stop the program at once. */
function stopOnSignals(): void {
  let stopping = false
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      if (stopping) process.exit(1)
      stopping = true
      app.stop().then(
        () => process.exit(0),
        (problem: unknown) => end(`It could not stop cleanly: ${(problem as Error).message}`, 1),
      )
    })
  }
}

try {
  const addresses = await app.start()
  stopOnSignals()
  process.stdout.write(greeting(addresses, settings.host, settings.certificate !== null))
} catch (problem) {
  const { sentence, status } = startProblem(problem, { data, port: settings.port, mqttPort: settings.mqttPort })
  end(sentence, status)
}
