import { fileURLToPath } from 'node:url'
import type { Action } from '../../server/contract/actions.ts'
import { defaultKilnConfig } from '../../server/contract/kiln-defaults.ts'
import { HttpDoor } from '../../server/http/server.ts'
import type { Instance } from '../../server/http/instance.ts'
import { People } from '../../server/http/people.ts'
import { actEntry } from '../../server/runtime/entry.ts'
import { silentLog } from '../../server/runtime/log.ts'
import { createMemoryStore } from '../../server/storage/memory.ts'
import type { Store } from '../../server/storage/store.ts'

const hour = 3_600_000

/** The web of a box whose clock a test turns by hand: real routes, real page, a store in memory, no kiln burning. */
export class RestSite {
  readonly store: Store
  now: number
  clockSure = true
  readonly instance: Instance
  private readonly door: HttpDoor
  private seq = 0

  constructor(now: number, store: Store = createMemoryStore()) {
    this.store = store
    this.now = now
    this.instance = {
      demo: false,
      store: this.store,
      now: () => this.now,
      speed: () => 1,
      clockSure: () => this.clockSure,
      clockConfirmed: () => this.clockSure,
      kilns: () => [],
      kilnView: () => null,
      siteView: () => ({ nodes: [], refused: {}, health: [], demo: null }),
      session: () => null,
      probes: () => [],
      idleCurve: () => [],
      forget: () => Promise.resolve(),
      act: () => Promise.resolve(),
      echo: () => undefined,
      leave: () => undefined,
      listen: () => () => undefined,
    }
    const box = {
      version: 'test',
      settings: () => ({ form: {}, values: {}, fixed: [] }),
      putSettings: () => Promise.resolve({ problems: [], restart: [] }),
      startDemo: () => Promise.resolve('no-demo' as const),
      stopDemo: () => Promise.resolve(),
    }
    this.door = new HttpDoor({
      host: '127.0.0.1',
      port: 0,
      pageFolder: process.env['PAGE_FOLDER'] ?? fileURLToPath(new URL('../../.build/app/web', import.meta.url)),
      instance: this.instance,
      people: new People(this.store, () => this.now),
      box,
      setup: {
        box: () => ({ addresses: [], mqttPort: null, root: 'firing', site: 'yard' }),
        clockWord: () => null,
        sayClock: () => Promise.resolve(),
        heard: () => [],
        sayHeard: () => Promise.resolve(),
        beep: () => undefined,
        beeps: () => [],
        rehearse: () => 'kiln-burns',
        rehearsal: () => null,
        endRehearsal: () => undefined,
      },
      access: () => ({ names: [], viewersWithoutLogin: false }),
      log: silentLog,
    })
  }

  async start(): Promise<string> {
    await this.store.start()
    return `http://127.0.0.1:${String((await this.door.start()).port)}/`
  }

  async stop(): Promise<void> {
    await this.door.stop()
    await this.store.stop()
  }

  moveDays(days: number): void {
    this.now += days * 24 * hour
  }

  /** A firing that ended: two bottles at 82 to 141 °C of smoke, 15.1 kg of charcoal; invented, and marked so. */
  async finishedFiring(id: string, litAt: number): Promise<void> {
    const kiln = defaultKilnConfig()
    const originSeq = this.seq
    const acts: [number, Action][] = [
      [-0.5, { action: 'load', massKg: 70, moisturePct: 30 }],
      [0, { action: 'light' }],
      [2, { action: 'start-collecting' }],
      [3.5, { action: 'swap-bottle', litres: 4 }],
      [5, { action: 'swap-bottle', litres: 4.2 }],
      [5, { action: 'stop-collecting' }],
      [7, { action: 'seal' }],
      [30, { action: 'unload', charcoalKg: 15.1, finesKg: 0.9 }],
    ]
    for (const [at, act] of acts) {
      this.seq += 1
      const doneAt = litAt + at * hour
      await this.store.append([
        actEntry({ seq: this.seq, at: doneAt }, kiln.kiln, { id: `${id}-${String(this.seq)}`, at: doneAt, doneAt, act }),
      ])
    }
    await this.store.savePoints(
      id,
      Array.from({ length: 71 }, (_, step) => ({ role: 'smoke' as const, t: litAt + (step * hour) / 10, value: 42.5 + (step * 98) / 50 })),
    )
    await this.store.putFiring({
      id,
      kiln: kiln.kiln,
      kilnName: 'Demo kiln',
      title: '',
      startedAt: litAt,
      endedAt: litAt + 31 * hour,
      demo: true,
      phases: [
        { phase: 'kindling', from: litAt, to: litAt + 7 * hour },
        { phase: 'cooling', from: litAt + 7 * hour, to: litAt + 30 * hour },
      ],
      spark: { t: [], wall: [], smoke: [] },
      originSeq,
      originAt: litAt,
      endSeq: this.seq,
      config: JSON.stringify(kiln),
      intake: new Uint8Array(),
      foldVersion: 1,
    })
  }
}
