import type { Calibration, ChannelId, KilnConfig, KilnId } from '../../../../server/contract/fold.ts'
import type { KilnChange } from '../../../../server/contract/learnt.ts'
import type { Role } from '../../../../server/contract/vocabulary.ts'
import type { HeardWord, RehearsalScene, SetupAnswer } from '../../../../server/contract/setup.ts'
import type { RouteName } from '../../../../server/contract/routes.ts'
import { ApiProblem, type Api } from '../../lib/api/api.ts'

export interface Refused {
  code: string
  details: { path: string; what: string }[]
}

/** What is put at one kiln; null takes a role or a calibration away. */
export interface KilnPatch extends Partial<Omit<KilnConfig, 'roles' | 'calibration'>> {
  roles?: Record<ChannelId, Role | null>
  calibration?: Record<ChannelId, Calibration | null>
}

const everyMs = 1000

/** What the box tells of the first run, asked once a second while a page of it is open. */
export class Desk {
  now = $state.raw<SetupAnswer | null>(null)
  reached = $state(true)
  /** Why the last change was not taken; null when it was. */
  refused = $state.raw<Refused | null>(null)
  readonly api: Api
  #asking: ReturnType<typeof setInterval> | undefined

  constructor(api: Api) {
    this.api = api
  }

  start(): void {
    void this.look()
    this.#asking = setInterval(() => void this.look(), everyMs)
  }

  stop(): void {
    clearInterval(this.#asking)
  }

  async look(): Promise<void> {
    try {
      const answer = await this.api.ask<SetupAnswer>('setup')
      this.now = 'probes' in answer ? answer : null
      this.reached = true
    } catch {
      this.reached = false
    }
  }

  putKiln(kiln: KilnId, patch: KilnPatch): Promise<boolean> {
    return this.#change('putKiln', { kiln }, patch)
  }

  /** What was learnt of a kiln before this change no longer counts. */
  forgetKiln(kiln: KilnId, what: KilnChange): Promise<boolean> {
    return this.#change('forgetKiln', { kiln }, { what })
  }

  sayClock(right: boolean): Promise<boolean> {
    return this.#change('sayClock', {}, { right })
  }

  sayHeard(word: Omit<HeardWord, 'at'>): Promise<boolean> {
    return this.#change('sayHeard', {}, word)
  }

  beep(): Promise<boolean> {
    return this.#change('beep', {}, {})
  }

  rehearse(scene: RehearsalScene): Promise<boolean> {
    return this.#change('startRehearsal', {}, { scene })
  }

  endRehearsal(): Promise<boolean> {
    return this.#change('endRehearsal', {}, undefined)
  }

  async #change(name: RouteName, params: Record<string, string>, body: unknown): Promise<boolean> {
    try {
      await this.api.ask(name, params, body === undefined ? {} : { body })
      this.refused = null
    } catch (problem) {
      this.refused = problem instanceof ApiProblem ? { code: problem.code, details: problem.details } : { code: 'internal', details: [] }
    }
    await this.look()
    return this.refused === null
  }
}
