import { StoreProblem, type StoreProblemCode } from '../store.ts'

/** Primary result codes of SQLite (sqlite.org/rescode.html). */
const codes: Record<number, StoreProblemCode> = {
  5: 'busy',
  6: 'busy',
  8: 'read-only',
  10: 'io',
  11: 'damaged',
  13: 'disk-full',
  14: 'io',
  26: 'damaged',
}
const systemCodes: Record<string, StoreProblemCode> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EROFS: 'read-only',
  EACCES: 'read-only',
  EPERM: 'read-only',
  EIO: 'io',
}

/** Any error of the engine or the file system as a problem of the store. */
export function problemFrom(error: unknown): StoreProblem {
  if (error instanceof StoreProblem) return error
  if (!(error instanceof Error)) return new StoreProblem('unknown', String(error))
  const { errcode, code } = error as Error & { errcode?: number; code?: string }
  // the low byte is the primary code; the rest tells which call failed
  const found = errcode === undefined ? systemCodes[code ?? ''] : codes[errcode & 0xff]
  return new StoreProblem(found ?? 'unknown', error.message)
}
