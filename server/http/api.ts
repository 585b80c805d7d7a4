import { randomBytes } from 'node:crypto'
import type { Context, Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { routes } from '../contract/routes.ts'
import type { Person, Route, RouteName } from '../contract/routes.ts'
import type { Log } from '../runtime/log.ts'
import type { Answer, Handler } from './context.ts'
import { mayAct } from './guard.ts'
import type { Instance } from './instance.ts'
import { Problem } from './problem.ts'

/** A note of many pages; nothing else comes near. */
const largestBodyBytes = 1024 * 1024
/** A recording of days, compressed, or a log of a season as text. */
const largestFileBytes = 16 * 1024 * 1024

export interface ApiSetup {
  handlers: Record<RouteName, Handler>
  who(context: Context): Person
  from(context: Context): string
  secure(context: Context): boolean
  /** Called for what was changed, with the name of the route. */
  noted(what: string, who: Person, from: string): void
  log: Log
}

/** Puts every route of the contract under `prefix`, each behind the person that the table names. */
export function mountApi(app: Hono, prefix: '' | '/demo', instance: () => Instance | null, setup: ApiSetup): void {
  const upTo = (maxSize: number) => bodyLimit({ maxSize, onError: () => toResponse(new Problem('too-large')) })
  const limits = { file: upTo(largestFileBytes), json: upTo(largestBodyBytes) }
  for (const [name, route] of Object.entries(routes) as [RouteName, Route][]) {
    const limit = limits[route.takes ?? 'json']
    app.on(route.method, [`${prefix}${route.path}`], limit, async (context) => {
      try {
        const site = instance()
        if (!site) throw new Problem('no-demo')
        const who = personAt(site, setup.who(context))
        const from = setup.from(context)
        if (!mayAct(who, route.least)) {
          setup.log.warn({ route: name, who, from }, 'a request was not allowed')
          throw new Problem('not-allowed')
        }
        const answer = await setup.handlers[name]({
          who,
          from,
          secure: setup.secure(context),
          instance: site,
          params: context.req.param() as Record<string, string>,
          query: queryOf(context),
          body: route.takes === 'file' ? await fileOf(context) : await bodyOf(context),
        })
        if (route.method !== 'GET' && !site.demo) setup.noted(name, who, from)
        return answered(answer)
      } catch (problem) {
        return failed(problem, setup.log, context)
      }
    })
  }
}

/** In the demo nothing can be spoilt, so whoever may look may act. */
export function personAt(instance: Instance, who: Person): Person {
  return instance.demo && who === 'viewer' ? 'operator' : who
}

function queryOf(context: Context): URLSearchParams {
  const query = new URL(context.req.url).searchParams
  const names = [...query.keys()]
  if (new Set(names).size !== names.length) throw new Problem('bad-request', [{ path: '', what: 'a parameter is given twice' }])
  return query
}

async function bodyOf(context: Context): Promise<unknown> {
  if (context.req.method === 'GET') return undefined
  const text = await context.req.text()
  if (text === '') return undefined
  if (!/^application\/json\s*(;|$)/i.test(context.req.header('content-type') ?? '')) throw new Problem('wrong-type')
  try {
    return JSON.parse(text)
  } catch {
    throw new Problem('not-json')
  }
}

async function fileOf(context: Context): Promise<Uint8Array> {
  if (!/^application\/octet-stream\s*(;|$)/i.test(context.req.header('content-type') ?? '')) throw new Problem('wrong-type')
  return new Uint8Array(await context.req.arrayBuffer())
}

function answered(answer: Answer): Response {
  if (answer === null) return new Response(null, { status: 204 })
  if (answer instanceof Response) return answer
  return Response.json(answer.json, { status: answer.status ?? 200, headers: { 'cache-control': 'no-store', ...answer.headers } })
}

function toResponse(problem: Problem): Response {
  // what was not read of a body cannot be skipped: the connection ends with the answer
  const headers: Record<string, string> = problem.code === 'too-large' ? { connection: 'close' } : {}
  return Response.json(problem.answer(), { status: problem.status(), headers })
}

export function failed(problem: unknown, log: Log, context: Context): Response {
  if (problem instanceof Problem) return toResponse(problem)
  if ((problem as { name?: string }).name === 'BodyLimitError') return toResponse(new Problem('too-large'))
  // the trace stays in the log; the number finds it there
  const id = randomBytes(4).toString('hex')
  log.error({ id, problem, method: context.req.method, path: context.req.path }, 'a request failed')
  const internal = new Problem('internal')
  return Response.json({ ...internal.answer(), id }, { status: internal.status() })
}
