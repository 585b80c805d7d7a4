import type { Act } from '../../../../server/contract/actions.ts'
import type { KilnConfig, Output } from '../../../../server/contract/fold.ts'
import { wholeCurvePoints, type Curve, type FiringSummary } from '../../../../server/contract/live.ts'
import { routes, type Person, type ProblemAnswer, type RouteName } from '../../../../server/contract/routes.ts'
import { apiAddress, type Place } from '../place.ts'

export interface WholeFiring extends FiringSummary {
  config: KilnConfig
  outputs: Output[]
  acts: Act[]
}

/** The answer was no success. `code` is a problem of the contract, or `unreachable`. */
export class ApiProblem extends Error {
  readonly code: string
  readonly details: { path: string; what: string }[]
  constructor(code: string, details: { path: string; what: string }[] = []) {
    super(code)
    this.code = code
    this.details = details
  }
}

/** What the service answers over HTTP, under the place that this page was served from. */
export class Api {
  readonly #place: Place

  constructor(place: Place) {
    this.#place = place
  }

  /** The newest first. @param most only so many of them */
  firings(most?: number): Promise<FiringSummary[]> {
    return this.ask('firings', {}, most === undefined ? {} : { query: { most: String(most) } })
  }

  firing(id: string): Promise<WholeFiring> {
    return this.ask('firing', { id })
  }

  curve(id: string): Promise<Curve> {
    return this.ask('firingCurve', { id }, { query: { points: String(wholeCurvePoints) } })
  }

  currentCurve(kiln: string): Promise<Curve> {
    return this.ask('currentCurve', {}, { query: { kiln } })
  }

  whoAmI(): Promise<{ person: Person }> {
    return this.ask('whoAmI')
  }

  glassAddress(kiln: string, act: string): string {
    return apiAddress(this.#place, pathOf('glassPicture', { kiln, id: act }))
  }

  recordingAddress(id: string): string {
    return apiAddress(this.#place, pathOf('recording', { id }))
  }

  /** @throws ApiProblem */
  async ask<T>(
    name: RouteName,
    params: Record<string, string> = {},
    more: { query?: Record<string, string>; body?: unknown } = {},
  ): Promise<T> {
    const address = new URL(apiAddress(this.#place, pathOf(name, params)))
    for (const [key, value] of Object.entries(more.query ?? {})) address.searchParams.set(key, value)
    const request: RequestInit = { method: routes[name].method }
    if (more.body !== undefined) {
      request.body = JSON.stringify(more.body)
      request.headers = { 'content-type': 'application/json' }
    }
    let answer: Response
    try {
      answer = await fetch(address, request)
    } catch {
      throw new ApiProblem('unreachable')
    }
    if (!answer.ok) throw await problemOf(answer)
    return (answer.status === 204 ? null : await answer.json()) as T
  }
}

function pathOf(name: RouteName, params: Record<string, string>): string {
  return routes[name].path.slice('/api/'.length).replace(/:(\w+)/g, (_, key: string) => encodeURIComponent(params[key] ?? ''))
}

async function problemOf(answer: Response): Promise<ApiProblem> {
  try {
    const { problem, details } = (await answer.json()) as ProblemAnswer
    return new ApiProblem(problem, details)
  } catch {
    return new ApiProblem('internal')
  }
}
