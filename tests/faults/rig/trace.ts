import { dirname } from 'node:path'

/** One thing that was done to the files, in order; names are within the folder that was watched. */
export type Step =
  | { do: 'write'; file: string; at: number; bytes: Buffer }
  | { do: 'truncate'; file: string; size: number }
  /** Of a folder, which is empty for the watched one: makes new names and removals last. */
  | { do: 'sync'; file: string }
  | { do: 'remove'; file: string }
  | { do: 'rename'; file: string; to: string }
  | { do: 'acknowledged'; seq: number }
type Change = Exclude<Step, { do: 'sync' | 'acknowledged' }>

export const tracedCalls = 'pwrite64,write,fsync,fdatasync,ftruncate,unlink,rename'

const sector = 512

/** Reads what `strace -f -y -xx -s 100000` wrote. @param folder only files in it count, by their names */
export function stepsOf(trace: string, folder: string): Step[] {
  const places = new Map<string, number>()
  return trace.split('\n').flatMap((line) => stepOf(line, folder, places) ?? [])
}

/** @param places where the next plain write to each file goes */
function stepOf(line: string, folder: string, places: Map<string, number>): Step | null {
  const call = /\b(pwrite64|write|fsync|fdatasync|ftruncate|unlink|rename)\((.*)\)\s+=\s+\d+/.exec(line)
  if (!call) return null
  const [, name = '', rest = ''] = call
  const within = (path: string) => (path.startsWith(`${folder}/`) ? path.slice(folder.length + 1) : null)
  if (name === 'unlink' || name === 'rename') {
    const [file = null, to = null] = [...rest.matchAll(/"((?:\\x[0-9a-f]{2})*)"/g)].map(([, text]) => within(textOf(text ?? '').toString()))
    if (file === null) return null
    places.delete(file)
    if (name === 'unlink') return { do: 'remove', file }
    return to === null ? null : { do: 'rename', file, to }
  }
  const handle = /^\d+<([^>]*)>(?:, (.*))?$/.exec(rest)
  const path = handle?.[1]?.includes('\\x') ? textOf(handle[1]).toString() : (handle?.[1] ?? '')
  if (path === folder && name === 'fsync') return { do: 'sync', file: '' }
  const file = within(path)
  if (file === null) return null
  const given = handle?.[2] ?? ''
  if (name === 'fsync' || name === 'fdatasync') return { do: 'sync', file }
  if (name === 'ftruncate') return { do: 'truncate', file, size: Number(given) }
  const bytes = textOf(/^"((?:\\x[0-9a-f]{2})*)"/.exec(given)?.[1] ?? '')
  if (file === 'acknowledged') return { do: 'acknowledged', seq: Number(bytes.toString()) }
  if (name === 'pwrite64') return { do: 'write', file, at: Number(/, (\d+)$/.exec(given)?.[1]), bytes }
  const at = places.get(file) ?? 0
  places.set(file, at + bytes.length)
  return { do: 'write', file, at, bytes }
}

const textOf = (escaped: string): Buffer => Buffer.from(escaped.replaceAll('\\x', ''), 'hex')

/** What a disk holds of the files after a power cut: all that was synced, and of the rest what `survives` says. */
export class Disk {
  readonly files = new Map<string, Buffer>()
  private waiting: Change[] = []

  take(step: Step): void {
    if (step.do === 'acknowledged') return
    if (step.do !== 'sync') return void this.waiting.push(step)
    const folderOf = (file: string) => (file.includes('/') ? dirname(file) : '')
    const isSynced = (each: Change) =>
      each.do === 'remove' || each.do === 'rename' ? folderOf(each.file) === step.file : each.file === step.file
    for (const each of this.waiting) if (isSynced(each)) apply(this.files, each)
    this.waiting = this.waiting.filter((each) => !isSynced(each))
  }

  get unsynced(): number {
    return this.waiting.length
  }

  /** @param survives of each unsynced step in order: lost, whole, or only some sectors of it */
  after(survives: (index: number) => 'lost' | 'whole' | 'torn', keepsSector: () => boolean): Map<string, Buffer> {
    const files = new Map([...this.files].map(([name, bytes]) => [name, Buffer.from(bytes)]))
    for (const [index, step] of this.waiting.entries()) {
      const how = survives(index)
      if (how === 'whole' || (how === 'torn' && step.do !== 'write')) apply(files, step)
      else if (how === 'torn' && step.do === 'write') {
        for (let from = 0; from < step.bytes.length; from += sector)
          if (keepsSector()) apply(files, { ...step, at: step.at + from, bytes: step.bytes.subarray(from, from + sector) })
      }
    }
    return files
  }

  /** After a cut here: nothing unsynced, the first of it, any of it, torn sectors of it. @param next numbers of 0 to 1 */
  cuts(next: () => number): { how: string; files: Map<string, Buffer> }[] {
    const upTo = Math.floor(next() * (this.unsynced + 1))
    const never = () => false
    return [
      { how: 'the rest lost', files: this.after(() => 'lost', never) },
      { how: `the first ${upTo}`, files: this.after((n) => (n < upTo ? 'whole' : 'lost'), never) },
      { how: 'some', files: this.after(() => (next() < 0.5 ? 'whole' : 'lost'), never) },
      {
        how: 'torn',
        files: this.after(
          () => 'torn',
          () => next() < 0.5,
        ),
      },
    ]
  }
}

/** A name that lasts for content that does not is a file with nothing in it, as journalling file systems leave it. */
function apply(files: Map<string, Buffer>, step: Change): void {
  const before = files.get(step.file) ?? Buffer.alloc(0)
  if (step.do === 'remove') return void files.delete(step.file)
  if (step.do === 'rename') {
    files.delete(step.file)
    return void files.set(step.to, before)
  }
  const size = step.do === 'truncate' ? step.size : Math.max(before.length, step.at + step.bytes.length)
  const after = size === before.length ? before : Buffer.concat([before.subarray(0, size), Buffer.alloc(Math.max(0, size - before.length))])
  if (step.do === 'write') step.bytes.copy(after, step.at)
  files.set(step.file, after)
}

/** Numbers of a fixed seed (xorshift), 0 to 1. */
export function chances(seed: number): () => number {
  let x = seed
  return () => {
    x ^= x << 13
    x ^= x >>> 17
    x ^= x << 5
    return (x >>> 0) / 2 ** 32
  }
}
