import { problems } from '../contract/routes.ts'
import type { ProblemAnswer, ProblemCode } from '../contract/routes.ts'

/** Thrown by a route; becomes its status and a JSON answer. What is not one of these is told as `internal`, its trace only in the log. */
export class Problem extends Error {
  readonly code: ProblemCode
  readonly details: NonNullable<ProblemAnswer['details']>
  constructor(code: ProblemCode, details: NonNullable<ProblemAnswer['details']> = []) {
    super(code)
    this.name = 'Problem'
    this.code = code
    this.details = details
  }
  status(): (typeof problems)[ProblemCode] {
    return problems[this.code]
  }
  answer(): ProblemAnswer {
    return { problem: this.code, ...(this.details.length > 0 ? { details: this.details } : {}) }
  }
}
