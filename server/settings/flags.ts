import { parseArgs } from 'node:util'

interface Flag {
  /** Setting that it sets; null for what is no setting. */
  key: string | null
  kind: 'text' | 'number' | 'switch'
  value?: string
  env?: string
  help: string
}

export const flags = {
  port: { key: 'port', kind: 'number', value: 'N', env: 'KILN_PORT', help: 'port of the page (8420)' },
  'mqtt-port': { key: 'mqttPort', kind: 'number', value: 'N', env: 'KILN_MQTT_PORT', help: 'port of the broker for the nodes (1883)' },
  host: { key: 'host', kind: 'text', value: 'ADDRESS', env: 'KILN_HOST', help: 'address to listen on (0.0.0.0)' },
  broker: { key: 'broker', kind: 'text', value: 'URL', env: 'KILN_BROKER', help: 'an outside broker instead, e.g. mqtt://192.168.1.5' },
  site: { key: 'site', kind: 'text', value: 'NAME', env: 'KILN_SITE', help: 'name of this place in every topic (yard)' },
  root: { key: 'root', kind: 'text', value: 'NAME', env: 'KILN_ROOT', help: 'first level of every topic (firing)' },
  'log-level': { key: 'logLevel', kind: 'text', value: 'LEVEL', env: 'KILN_LOG_LEVEL', help: 'error, warn, info or debug (info)' },
  data: { key: null, kind: 'text', value: 'FOLDER', env: 'KILN_DATA', help: 'data folder (./data)' },
  config: { key: null, kind: 'text', value: 'FILE', env: 'KILN_CONFIG', help: 'settings file (settings.json in the data folder)' },
  'host-sound': {
    key: null,
    kind: 'text',
    value: 'PROGRAM',
    env: 'KILN_HOST_SOUND',
    help: 'run at each sound of an alarm with its priority and code: a loudspeaker or relay of this machine',
  },
  restore: { key: null, kind: 'text', value: 'BACKUP', help: 'put a backup in the place of the database, and end' },
  'print-config': { key: null, kind: 'switch', help: 'print the settings as they would be used, and end' },
  help: { key: null, kind: 'switch', help: 'this text' },
  version: { key: null, kind: 'switch', help: 'print the version, and end' },
} as const satisfies Record<string, Flag>

type FlagName = keyof typeof flags
const entries = Object.entries(flags) as [FlagName, Flag][]

export function helpText(): string {
  const left = ([name, flag]: [string, Flag]) => `  --${name}${flag.value ? ` ${flag.value}` : ''}`
  const width = Math.max(...entries.map((entry) => left(entry).length)) + 2
  const rows = entries.map((entry) => `${left(entry).padEnd(width)}${entry[1].help}${entry[1].env ? `  [${entry[1].env}]` : ''}`)
  return [
    'Usage: npm start -- [flags]',
    'Watches the firing of a drum kiln and says when to start collecting, stop, seal and open.',
    '',
    ...rows,
    '',
    'A flag counts before the environment (names in brackets), that before the settings file, that before the defaults.',
    `Any other name that begins with ${prefix} is refused.`,
    'Exit status: 0 stopped, 2 wrong flag or setting, 3 already running on this data folder, 4 a port is taken,',
    '5 the data folder cannot be written or is open to everybody, 6 the backup cannot be used, 70 an unexpected failure',
    'while running (start it again), 1 anything else.',
  ].join('\n')
}

export interface Given {
  settings: Record<string, unknown>
  data: string
  config: string | null
  hostSound: string | null
  restore: string | null
  printConfig: boolean
  help: boolean
  version: boolean
}

const prefix = 'KILN_'

/** Names in the environment that look like ours and are none: a mistyped one must not go unheard. */
export function strangersIn(environment: Readonly<Record<string, string | undefined>>): string[] {
  const ours = new Set(entries.flatMap(([, { env }]) => env ?? []))
  return Object.keys(environment).filter((name) => name.startsWith(prefix) && !ours.has(name))
}

/** What flags and environment say, flags first. @throws Error whose message is for the user */
export function given(argv: readonly string[], environment: Readonly<Record<string, string | undefined>>): Given {
  const options = Object.fromEntries(
    entries.map(([name, flag]) => [name, { type: flag.kind === 'switch' ? 'boolean' : 'string' } as const]),
  )
  const { values } = parseArgs({ args: [...argv], options, strict: true, allowPositionals: false })
  const value = (name: FlagName): string | undefined => {
    const { env } = flags[name] as Flag
    const own = values[name]
    return typeof own === 'string' ? own : env === undefined ? undefined : environment[env]
  }
  const settings: Record<string, unknown> = {}
  for (const [name, flag] of entries) {
    const text = value(name)
    // what is no number stays as it is, so that the schema can say so with all the rest
    if (flag.key !== null && text !== undefined) settings[flag.key] = flag.kind === 'number' && /^\d+$/.test(text) ? Number(text) : text
  }
  return {
    settings,
    data: value('data') ?? './data',
    config: value('config') ?? null,
    hostSound: value('host-sound') ?? null,
    restore: value('restore') ?? null,
    printConfig: values['print-config'] === true,
    help: values.help === true,
    version: values.version === true,
  }
}
