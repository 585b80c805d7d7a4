import type { z } from 'zod'
import type { Person } from '../contract/routes.ts'
import type { Instance } from './instance.ts'
import { Problem } from './problem.ts'

/** One question as a handler sees it: who asks, about which site, and what came with it. */
export interface Question {
  who: Person
  /** Address of the other side. */
  from: string
  /** Over TLS. */
  secure: boolean
  instance: Instance
  params: Record<string, string>
  /** A parameter given twice is refused: which one counts would be a guess (reliability 6, S28). */
  query: URLSearchParams
  /** Parsed JSON body, or the bytes of a route that takes a file; undefined where none came. */
  body: unknown
}

export type Answer = Response | { json: unknown; status?: 200 | 201; headers?: Record<string, string> } | null
export type Handler = (question: Question) => Promise<Answer> | Answer

/** @throws Problem that names every member that is not understood */
export function understood<T extends z.ZodType>(schema: T, value: unknown): z.infer<T> {
  const result = schema.safeParse(value)
  if (result.success) return result.data
  throw new Problem(
    'not-understood',
    result.error.issues.map((issue) => ({ path: issue.path.join('.'), what: issue.message })),
  )
}

export function numberOf(query: URLSearchParams, name: string, bounds: { low: number; high: number; standard: number }): number {
  const text = query.get(name)
  if (text === null) return bounds.standard
  const value = Number(text)
  if (text.trim() === '' || !Number.isFinite(value)) throw new Problem('not-understood', [{ path: name, what: 'is no number' }])
  return Math.min(bounds.high, Math.max(bounds.low, value))
}
