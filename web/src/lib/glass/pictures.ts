import type { ActId, KilnId } from '../../../../server/contract/fold.ts'
import type { DripLook } from '../../../../server/contract/vocabulary.ts'
import type { Drawer } from '../live/outbox.svelte.ts'
import { apiAddress, type Place } from '../place.ts'

interface Waiting {
  act: ActId
  kiln: KilnId
  drip: DripLook
  base64: string
}

/** More than a firing has of them; the browser's drawer holds about 5 MB. */
const most = 40
/** What waits is tried again so often. */
const againMs = 15_000

/** Photographs of glasses on their way to the service: kept over a reload, sent again until they are taken. */
export class GlassPictures {
  readonly #place: Place
  readonly #drawer: Drawer
  readonly #key: string
  #busy = false
  #sending: ReturnType<typeof setInterval> | undefined

  constructor(place: Place, drawer: Drawer) {
    this.#place = place
    this.#drawer = drawer
    this.#key = `glasses ${place.base.pathname}`
  }

  start(): void {
    void this.send()
    this.#sending = setInterval(() => void this.send(), againMs)
  }

  stop(): void {
    clearInterval(this.#sending)
  }

  addressOf(kiln: KilnId, act: ActId): string {
    // one that has not been sent yet is shown from the drawer
    const waits = this.#read().find((one) => one.act === act)
    return waits ? `data:image/jpeg;base64,${waits.base64}` : apiAddress(this.#place, `glasses/${kiln}/${act}`)
  }

  /** This kiln's own choices: for each look the newest photographed glass; empty where the link is down. */
  async looks(kiln: KilnId): Promise<Partial<Record<DripLook, ActId>>> {
    try {
      const answer = await fetch(apiAddress(this.#place, `glasses/${kiln}`))
      return answer.ok ? ((await answer.json()) as Partial<Record<DripLook, ActId>>) : {}
    } catch {
      return {}
    }
  }

  /** False where the tablet has no room for it; the glass is then logged by its colour alone. */
  keep(picture: Waiting): boolean {
    try {
      this.#write([...this.#read(), picture].slice(-most))
      return true
    } catch {
      return false
    }
  }

  /** One after the other; what fails stays. A picture that the service refuses would be refused for ever. */
  async send(): Promise<void> {
    if (this.#busy) return
    this.#busy = true
    try {
      for (const { act, kiln, drip, base64 } of this.#read()) {
        const body = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
        const headers = { 'content-type': 'application/octet-stream' }
        const answer = await fetch(apiAddress(this.#place, `glasses/${kiln}/${act}?drip=${drip}`), { method: 'PUT', headers, body })
        if (!answer.ok && answer.status !== 413 && answer.status !== 422) return
        this.#write(this.#read().filter((one) => one.act !== act))
      }
    } catch {
      // the link is down: sent with the next try
    } finally {
      this.#busy = false
    }
  }

  #read(): Waiting[] {
    try {
      const kept: unknown = JSON.parse(this.#drawer.getItem(this.#key) ?? '[]')
      return Array.isArray(kept) ? (kept as Waiting[]) : []
    } catch {
      return []
    }
  }

  #write(pictures: readonly Waiting[]): void {
    this.#drawer.setItem(this.#key, JSON.stringify(pictures))
  }
}
