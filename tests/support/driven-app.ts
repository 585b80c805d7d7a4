import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import mqtt from 'mqtt'
import type { MqttClient } from 'mqtt'
import { createApp } from '../../server/app.ts'
import type { App, Running } from '../../server/app.ts'
import { silentLog } from '../../server/runtime/log.ts'
import type { Log } from '../../server/runtime/log.ts'
import { SteppedClock } from '../../server/runtime/stepped-clock.ts'
import { settingsSchema } from '../../server/settings/schema.ts'
import { createSqliteStore } from '../../server/storage/sqlite/store.ts'
import type { SqliteStore } from '../../server/storage/sqlite/store.ts'

export const builtFolder = new URL('../../.build/app/', import.meta.url).pathname

export interface DrivenApp extends Running {
  app: App
  store: SqliteStore
  clock: SteppedClock
  folder: string
  client: MqttClient
  url: string
  publish(kind: string, document: unknown, retain?: boolean): Promise<void>
}

/** The whole app on free ports, with a real broker and a real store, and a clock that the test moves. */
export async function driveApp(setup: {
  at: number
  folder?: string
  settings?: object
  log?: Log
  demoFolder?: string
  tls?: { cert: string; key: string }
  /** Program that sounds alarms on this machine. */
  hostSound?: string
}): Promise<DrivenApp> {
  const folder = setup.folder ?? mkdtempSync(join(tmpdir(), 'driven-'))
  const store = createSqliteStore({ folder, windowMs: 1, program: join(builtFolder, 'server', 'storage-worker.js'), ballastBytes: 0 })
  const clock = new SteppedClock(setup.at)
  const app = createApp({
    settings: settingsSchema.parse({ host: '127.0.0.1', port: 0, mqttPort: 0, ...setup.settings }),
    fixed: [],
    settingsFile: join(folder, 'settings.json'),
    store,
    pageFolder: join(builtFolder, 'web'),
    demoFolder: setup.demoFolder ?? new URL('../../server/simulator/demo/', import.meta.url).pathname,
    version: 'test',
    log: setup.log ?? silentLog,
    tls: setup.tls ?? null,
    hostSound: setup.hostSound ?? null,
    clock: () => clock,
  })
  const running = await app.start()
  const client = await mqtt.connectAsync(`${setup.tls ? 'mqtts' : 'mqtt'}://127.0.0.1:${String(running.mqttPort)}`, {
    clientId: 'n1',
    reconnectPeriod: 0,
    rejectUnauthorized: !setup.tls,
  })
  const publish = async (kind: string, document: unknown, retain = false) => {
    await client.publishAsync(`firing/1/yard/n1/${kind}`, JSON.stringify(document), { qos: 1, retain })
  }
  return { ...running, app, store, clock, folder, client, url: `http://127.0.0.1:${running.port}`, publish }
}

export async function post(url: string, body: unknown, method = 'POST'): Promise<Response> {
  return fetch(url, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
}

export async function getJson<T>(url: string): Promise<T> {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`${url}: ${answer.status} ${await answer.text()}`)
  return (await answer.json()) as T
}
