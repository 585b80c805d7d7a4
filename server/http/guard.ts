import { isIP } from 'node:net'
import { hostname } from 'node:os'
import { people } from '../contract/routes.ts'
import type { Person } from '../contract/routes.ts'
import type { People } from './people.ts'

export interface Asked {
  host: string | undefined
  origin: string | undefined
  fetchSite: string | undefined
  cookie: string | undefined
  /** Address of the other side. */
  remote: string | undefined
}

/** Over TLS a browser holds the name with the prefix to this very host and to TLS (reliability 6, S10). */
const cookieNames = { plain: 'kiln-device', secure: '__Host-kiln-device' } as const
const isLoopback = (address: string | undefined): boolean =>
  address !== undefined && (address === '::1' || address.startsWith('127.') || address.startsWith('::ffff:127.'))

/** Name or address of a Host header without its port; null where it is none. */
function nameOf(host: string | undefined): string | null {
  const found = host === undefined ? null : /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(:\d{1,5})?$/i.exec(host)
  return found?.[1] ? found[1].replace(/^\[|\]$/g, '').toLowerCase() : null
}

/** Decides who asks and whether the question comes from a page of ours (reliability 6, S13 to S15). */
export class Guard {
  private readonly devices: People
  private readonly setup: () => { names: readonly string[]; viewersWithoutLogin: boolean }

  constructor(devices: People, setup: Guard['setup']) {
    this.devices = devices
    this.setup = setup
  }

  /** Only addresses, this machine's name and names from the settings: a foreign name that points here is an attack on the page. */
  knowsHost(host: string | undefined): boolean {
    const name = nameOf(host)
    if (name === null) return false
    if (isIP(name) !== 0 || name === 'localhost') return true
    const own = hostname().toLowerCase()
    return [own, `${own}.local`, ...this.setup().names.map((one) => one.toLowerCase())].includes(name)
  }

  /** A question that changes something must come from a page of this very host. Programs send no origin; browsers always do. */
  fromOwnPage({ origin, host, fetchSite }: Asked): boolean {
    if (fetchSite !== undefined && fetchSite !== 'same-origin' && fetchSite !== 'none') return false
    if (origin === undefined) return true
    try {
      return new URL(origin).host === host
    } catch {
      return false
    }
  }

  isHere({ remote, host }: Asked): boolean {
    return isLoopback(remote) && ['localhost', '127.0.0.1', '::1'].includes(nameOf(host) ?? '')
  }

  who(asked: Asked): Person {
    if (this.isHere(asked)) return 'owner' // whoever sits at this machine can read its files anyway
    const device = this.devices.deviceOf(secretIn(asked.cookie))
    if (device) return device.person
    return this.setup().viewersWithoutLogin ? 'viewer' : 'anyone'
  }
}

export function mayAct(who: Person, least: Person): boolean {
  return people.indexOf(who) >= people.indexOf(least)
}

function secretIn(cookie: string | undefined): string | undefined {
  for (const part of cookie?.split(';') ?? []) {
    const [name, value] = part.trim().split('=')
    if (name === cookieNames.plain || name === cookieNames.secure) return value
  }
  return undefined
}

/** 400 days: the longest that browsers keep. */
export const cookieFor = (secret: string, secure: boolean): string =>
  `${cookieNames[secure ? 'secure' : 'plain']}=${secret}; HttpOnly; SameSite=Strict; Path=/; Max-Age=34560000${secure ? '; Secure' : ''}`
