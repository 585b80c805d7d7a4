import type { CallView } from '../contract/live.ts'
import type { AlarmCode, Priority } from '../contract/vocabulary.ts'
import type { Command } from '../contract/live.ts'
import type { KilnId, Ms } from '../contract/fold.ts'
import type { Said } from './broker.ts'

// Everything the service says under `{root}/1/{site}/server/`, and its commands to nodes (wire format, "Topics").

/** First topic level and site. */
export interface Where {
  root: string
  site: string
}

/** How often, ms; the beat comes from the loop that evaluates the rules, and only while that loop is healthy. */
export const timeEveryMs = 30_000
export const beatEveryMs = 3_000

/** What a buzzer or lamp node plays: 0 nothing, 3 the most urgent. */
export type SoundPattern = 0 | 1 | 2 | 3
const sounds: Record<Priority | 'none', SoundPattern> = { none: 0, notice: 1, warning: 2, urgent: 3 }

const secondsOf = (at: Ms) => at / 1000

function said({ root, site }: Where, kind: string, body: object, qos: 0 | 1, retain: boolean): Said {
  return { topic: `${root}/1/${site}/server/${kind}`, payload: JSON.stringify(body), qos, retain }
}

export function sayState(where: Where, s: 'online' | 'offline', since: Ms): Said {
  return said(where, 'state', { s, since: Math.floor(secondsOf(since)) }, 1, true)
}

export function sayTime(where: Where, now: Ms): Said {
  return said(where, 'time', { t: secondsOf(now) }, 0, false)
}

export function sayBeat(where: Where, seq: number, firing: boolean): Said {
  return said(where, 'beat', { seq, firing }, 0, false)
}

/** @param silenced an acknowledged alarm is still shown but no longer sounded */
export function sayAlert(where: Where, level: Priority | 'none', code: AlarmCode | '', since: Ms, silenced: boolean, seq: number): Said {
  const sound = silenced ? 0 : sounds[level]
  return said(where, 'alert', { level, code, since: Math.floor(secondsOf(since)), sound, seq }, 1, true)
}

/** The standing instruction to the operator of one kiln. */
export function sayCall(where: Where, kiln: KilnId, firing: string | null, order: Command | CallView['call'], since: Ms): Said {
  return said(where, `call/${kiln}`, { firing: firing ?? '', do: order, since: Math.floor(secondsOf(since)) }, 1, true)
}

/** @param node the node's own name, without the site */
export function sayCommand({ root, site }: Where, node: string, id: string, order: 'rebirth' | 'identify' | 'beep'): Said {
  return { topic: `${root}/1/${site}/${node}/cmd`, payload: JSON.stringify({ id, do: order }), qos: 1, retain: false }
}
