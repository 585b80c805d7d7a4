import type { Ms } from './contract/fold.ts'
import type { SiteView } from './contract/live.ts'
import { Demo, demoFile } from './demo.ts'
import { People } from './http/people.ts'
import type { Instance } from './http/instance.ts'
import type { NodeDoor } from './http/routes/nodes.ts'
import { HttpDoor } from './http/server.ts'
import { instanceOf } from './instance.ts'
import type { AppSite } from './instance.ts'
import type { Broker, BrokerEars, Said } from './mqtt/broker.ts'
import { createBroker } from './mqtt/embedded.ts'
import { NodeKeys } from './mqtt/node-keys.ts'
import { createOutsideBroker } from './mqtt/outside.ts'
import { sayCommand } from './mqtt/said.ts'
import { Voice } from './mqtt/voice.ts'
import type { Clock } from './runtime/clock.ts'
import { systemClock } from './runtime/clock.ts'
import type { Effect } from './runtime/driver.ts'
import { houseFolds } from './runtime/house-folds.ts'
import { HostSound } from './runtime/host-sound.ts'
import type { Log } from './runtime/log.ts'
import { rolesAfter } from './runtime/roles.ts'
import { Site } from './runtime/site.ts'
import { readSettingsFile, writeWhole } from './settings/file.ts'
import { kilnConfigOf } from './settings/kiln.ts'
import { problemsOf } from './settings/problems.ts'
import { settingsForm, settingsSchema } from './settings/schema.ts'
import type { Settings } from './settings/schema.ts'
import { SetupDesk } from './setup-desk.ts'
import type { Store } from './storage/store.ts'

export interface AppSetup {
  settings: Settings
  /** Settings that flags or the environment fixed for this run. */
  fixed: readonly string[]
  settingsFile: string
  /** PEM texts of the settings' certificate. */
  tls?: { cert: string; key: string } | null
  /** Program that sounds alarms on this machine, whole path. */
  hostSound?: string | null
  store: Store
  /** Folder of the built page. */
  pageFolder: string
  /** Folder of the shipped demo recordings. */
  demoFolder: string
  version: string
  log: Log
  /** Drives time in tests; the real clock where it is missing. */
  clock?: (notBefore: Ms) => Clock
}

export interface Running {
  port: number
  /** Null where the broker is another's. */
  mqttPort: number | null
  /** Nobody was paired as the owner yet. */
  fresh: boolean
  /** An invitation for one browser, to be printed as a QR code. */
  invitation: string
}

const speakEveryMs = 1000

/** Everything wired together: the one place where all rooms know each other. */
export class App {
  private readonly setup: AppSetup
  private settings: Settings
  private readonly site: AppSite
  private readonly people: People
  private readonly nodeKeys: NodeKeys
  private readonly desk: SetupDesk
  private readonly voice: Voice
  private readonly hostSound: HostSound | null
  private readonly broker: Broker
  private readonly http: HttpDoor
  private demo: Promise<Demo> | null = null
  private demoSpeed = 1
  private commands = 0
  private spokenAt = 0
  private started: (() => Promise<void>)[] = []

  constructor(setup: AppSetup) {
    this.setup = setup
    this.settings = setup.settings
    const { settings, store, log } = setup
    const where = { root: settings.root, site: settings.site }
    const site: AppSite = new Site({
      folds: houseFolds,
      store,
      clock: setup.clock ?? systemClock,
      ...where,
      configs: settings.kilns.map(kilnConfigOf),
      demo: false,
      log,
    })
    this.site = site
    this.people = new People(store, Date.now)
    this.nodeKeys = new NodeKeys(store, Date.now, () => this.settings.onlyPairedNodes)
    this.broker = this.makeBroker()
    const publish = (said: Said) => void this.broker.publish(said).catch((problem: unknown) => log.warn({ problem }, 'mqtt'))
    this.desk = new SetupDesk({ where, host: settings.host, site, store, publish, onVoice: () => this.voice.speak() })
    this.voice = new Voice(where, this.desk.spoken(), publish)
    this.hostSound = setup.hostSound ? new HostSound(setup.hostSound, () => this.voice.sounding(), log) : null
    const isPlaying = () => (this.demo ? { playing: true, speed: this.demoSpeed } : null)
    this.http = new HttpDoor({
      host: settings.host,
      port: settings.port,
      tls: setup.tls ?? null,
      pageFolder: setup.pageFolder,
      instance: this.instance(isPlaying),
      people: this.people,
      box: {
        version: setup.version,
        settings: () => ({ form: settingsForm(), values: this.settings, fixed: setup.fixed }),
        putSettings: (values) => this.putSettings(values),
        startDemo: (speed, anew) => this.startDemo(speed, anew),
        stopDemo: () => this.stopDemo(),
      },
      setup: this.desk,
      ...(settings.broker === null ? { nodes: this.nodeDoor() } : {}),
      access: () => this.settings,
      log,
    })
  }

  /** Rejects with the problem of the first part that cannot start; what had started is stopped again. */
  async start(): Promise<Running> {
    try {
      await this.site.start()
      this.started.push(() => this.site.stop())
      await this.people.start()
      this.started.push(() => this.people.register.settled())
      if (!this.people.register.whole()) this.setup.log.error({}, 'the register of who did what was changed from outside')
      await this.nodeKeys.start()
      await this.desk.start()
      this.started.push(() => Promise.resolve(this.desk.stop()))
      const { port } = await this.http.start()
      this.started.push(() => this.http.stop())
      const { port: mqttPort } = await this.broker.start(this.voice.standing())
      this.started.push(() => this.broker.stop())
      this.desk.openedAt(mqttPort)
      const unlisten = this.site.listen((effects) => this.told(effects))
      this.started.push(() => Promise.resolve(unlisten()))
      this.voice.start()
      this.hostSound?.start()
      this.started.push(() => Promise.resolve(this.hostSound?.stop()))
      this.started.push(async () => {
        this.voice.stop()
        await this.broker.publish(this.voice.offline())
      })
      const fresh = this.people.isNew()
      return { port, mqttPort, fresh, invitation: this.people.invite(fresh ? 'owner' : 'operator', '') }
    } catch (problem) {
      await this.stop()
      throw problem
    }
  }

  async stop(): Promise<void> {
    await this.stopDemo()
    for (let undo = this.started.pop(); undo; undo = this.started.pop()) await undo()
  }

  private nodeDoor(): NodeDoor {
    const { nodeKeys, broker } = this
    const reviewed = <T>(changed: Promise<T>): Promise<T> => changed.finally(() => broker.review())
    return {
      list: () => nodeKeys.list(),
      confirm: (node) => reviewed(nodeKeys.confirm(node)),
      make: (node) => reviewed(nodeKeys.make(node)),
      remove: (node) => reviewed(nodeKeys.remove(node)),
      turnedAway: () => broker.turnedAway(),
    }
  }

  private instance(demo: () => SiteView['demo']): Instance {
    const instance = instanceOf(this.site, this.setup.store, { isDemo: false, demo, clockWord: () => this.desk.clockWord() })
    const act: Instance['act'] = async (kiln, done) => {
      await this.site.act(kiln, done)
      this.desk.acted(done)
    }
    return { ...instance, act }
  }

  private told(effects: readonly Effect[]): void {
    // a real firing takes the buzzers back
    if (effects.some((effect) => effect.kind === 'opened')) this.desk.endRehearsal()
    for (const effect of effects) {
      if (effect.kind !== 'command') continue
      const node = effect.node.slice(effect.node.indexOf('/') + 1)
      const said = sayCommand(this.settings, node, `c${this.site.now()}-${++this.commands}`, effect.do)
      this.broker.publish(said).catch((problem: unknown) => this.setup.log.warn({ problem }, 'a node could not be told'))
    }
    // an alarm at once; an instruction that an act changed within a second
    const now = performance.now()
    if (now - this.spokenAt < speakEveryMs && !effects.some((effect) => effect.kind === 'output')) return
    this.spokenAt = now
    this.voice.speak()
  }

  private makeBroker(): Broker {
    const { settings, log, store } = this.setup
    const { host, mqttPort, root, site, broker: url } = settings
    const ears: BrokerEars = {
      onMessage: (message) => {
        this.desk.message(message)
        return this.site.receive(message)
      },
      onRefused: async ({ sender, topic, reason, payload }) => {
        await store.quarantine([{ at: this.site.now(), sender, topic, reason, payload }])
      },
      log,
    }
    if (url === null) return createBroker({ ...ears, host, port: mqttPort, root, site, nodes: this.nodeKeys, tls: this.setup.tls ?? null })
    const will = { topic: `${root}/1/${site}/server/state`, payload: JSON.stringify({ s: 'offline' }), qos: 1, retain: true } as const
    return createOutsideBroker({ ...ears, url, root, site, clientId: `server-${site}`, will })
  }

  private async putSettings(values: unknown): Promise<{ problems: { path: string; what: string }[]; restart: string[] }> {
    const result = settingsSchema.safeParse(values)
    if (!result.success) return { problems: problemsOf(result.error), restart: [] }
    const { settings: running } = this.setup
    const wanted = result.data
    writeWhole(this.setup.settingsFile, this.forFile(wanted))
    this.settings = wanted
    this.broker.review()
    for (const kiln of wanted.kilns) {
      const current = this.site.session(kiln.kiln)?.config
      const roles = rolesAfter(current?.roles ?? {}, kiln.roles)
      const config = { ...kilnConfigOf(kiln), roles, charge: current?.charge ?? {}, ...(current?.prior ? { prior: current.prior } : {}) }
      if (JSON.stringify(current) !== JSON.stringify(config)) await this.site.configure(config)
    }
    const later = ['host', 'port', 'mqttPort', 'broker', 'root', 'site', 'logLevel', 'certificate', 'certificateKey'] as const
    return { problems: [], restart: later.filter((key) => wanted[key] !== running[key]) }
  }

  /** What a flag or the environment fixed for this run does not wander into the file. */
  private forFile(wanted: Settings): Record<string, unknown> {
    const { fixed, settings, settingsFile } = this.setup
    const before = readSettingsFile(settingsFile)
    const running = new Map<string, unknown>(Object.entries(settings))
    return Object.fromEntries(
      Object.entries(wanted).flatMap(([key, value]) => {
        if (!fixed.includes(key) || running.get(key) !== value) return [[key, value]]
        return key in before ? [[key, before[key]]] : []
      }),
    )
  }

  private async startDemo(speed: number, anew: boolean): Promise<'playing' | 'no-demo'> {
    this.demoSpeed = speed
    const standing = await this.demo
    if (standing && (anew || standing.hasEnded())) await this.stopDemo()
    // two touches at once may both have asked: the first one's demo is anew for both
    if (this.demo) {
      const demo = await this.demo
      demo.setSpeed(speed)
      return 'playing'
    }
    const file = demoFile(this.setup.demoFolder)
    if (file === null) return 'no-demo'
    this.demo = this.openDemo(file, speed)
    try {
      await this.demo
      return 'playing'
    } catch (problem) {
      this.demo = null
      throw problem
    }
  }

  private async openDemo(file: string, speed: number): Promise<Demo> {
    const demo = await Demo.of(file, houseFolds, this.setup.log, speed)
    await demo.start()
    this.http.mount('/demo', demo.instance)
    return demo
  }

  private async stopDemo(): Promise<void> {
    const { demo } = this
    if (!demo) return
    this.demo = null
    const playing = await demo
    this.http.unmount('/demo')
    await playing.stop()
  }
}

export function createApp(setup: AppSetup): App {
  return new App(setup)
}
