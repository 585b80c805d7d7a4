import type { Curve, FiringSummary } from '../../../../server/contract/live.ts'
import { apiAddress, type Place } from '../place.ts'

/** What the service answers over HTTP. Every call rejects when the link is down or the answer is no success. */
export class Api {
  readonly #place: Place

  constructor(place: Place) {
    this.#place = place
  }

  async #get<T>(path: string): Promise<T> {
    const answer = await fetch(apiAddress(this.#place, path), { headers: { accept: 'application/json' } })
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`)
    return (await answer.json()) as T
  }

  async send(path: string, body: unknown, method = 'POST'): Promise<unknown> {
    const answer = await fetch(apiAddress(this.#place, path), {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`)
    return answer.status === 204 ? null : await answer.json()
  }

  firings(): Promise<FiringSummary[]> {
    return this.#get('firings')
  }

  curve(firing: string, buckets = 500): Promise<Curve> {
    return this.#get(`firings/${encodeURIComponent(firing)}/curve?buckets=${buckets}`)
  }

  exportAddress(firing: string): string {
    return apiAddress(this.#place, `firings/${encodeURIComponent(firing)}/export`)
  }
}
