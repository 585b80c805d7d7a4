import type { z } from 'zod'

export interface SettingsProblem {
  /** Where it stands: `kilns.0.volumeL`. */
  path: string
  what: string
}

/** Every problem at once, each with its path. */
export function problemsOf(error: z.ZodError): SettingsProblem[] {
  return error.issues.flatMap((issue) => {
    const path = issue.path.map(String)
    if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => ({ path: [...path, key].join('.'), what: 'is no setting' }))
    return [{ path: path.join('.') || '(file)', what: issue.message }]
  })
}

export class SettingsError extends Error {
  readonly problems: SettingsProblem[]
  constructor(from: string, problems: SettingsProblem[]) {
    super(problems.map(({ path, what }) => [from, path, what].filter(Boolean).join(': ')).join('\n'))
    this.name = 'SettingsError'
    this.problems = problems
  }
}
