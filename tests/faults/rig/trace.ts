/** One thing that was done to the files, in order. */
export type Step =
  | { do: 'write'; file: string; at: number; bytes: Buffer }
  | { do: 'truncate'; file: string; size: number }
  /** `file` is empty for the folder itself: that makes removals last. */
  | { do: 'sync'; file: string }
  | { do: 'remove'; file: string }
  | { do: 'acknowledged'; seq: number }

const sector = 512

/** Reads what `strace -f -y -xx -s 100000` wrote. @param folder only files in it count, by their names */
export function stepsOf(trace: string, folder: string): Step[] {
  return trace.split('\n').flatMap((line) => stepOf(line, folder) ?? [])
}

function stepOf(line: string, folder: string): Step | null {
  const call = /\b(pwrite64|write|fsync|fdatasync|ftruncate|unlink)\((.*)\)\s+=\s+\d+/.exec(line)
  if (!call) return null
  const [, name = '', rest = ''] = call
  if (name === 'unlink') {
    const path = textOf(/^"((?:\\x[0-9a-f]{2})*)"/.exec(rest)?.[1] ?? '').toString()
    return path.startsWith(`${folder}/`) ? { do: 'remove', file: path.slice(folder.length + 1) } : null
  }
  const handle = /^\d+<([^>]*)>(?:, (.*))?$/.exec(rest)
  const path = handle?.[1]?.includes('\\x') ? textOf(handle[1]).toString() : (handle?.[1] ?? '')
  if (path === folder && name === 'fsync') return { do: 'sync', file: '' }
  if (!path.startsWith(`${folder}/`)) return null
  const file = path.slice(folder.length + 1)
  const given = handle?.[2] ?? ''
  if (name === 'fsync' || name === 'fdatasync') return { do: 'sync', file }
  if (name === 'ftruncate') return { do: 'truncate', file, size: Number(given) }
  const bytes = textOf(/^"((?:\\x[0-9a-f]{2})*)"/.exec(given)?.[1] ?? '')
  if (file === 'acknowledged') return { do: 'acknowledged', seq: Number(bytes.toString()) }
  return name === 'pwrite64' ? { do: 'write', file, at: Number(/, (\d+)$/.exec(given)?.[1]), bytes } : null
}

const textOf = (escaped: string): Buffer => Buffer.from(escaped.replaceAll('\\x', ''), 'hex')

/** What a disk holds of the files after a power cut: all that was synced, and of the rest what `survives` says. */
export class Disk {
  readonly files = new Map<string, Buffer>()
  private waiting: Exclude<Step, { do: 'sync' | 'acknowledged' }>[] = []

  take(step: Step): void {
    if (step.do === 'acknowledged') return
    if (step.do !== 'sync') return void this.waiting.push(step)
    const isSynced = (each: (typeof this.waiting)[number]) => (step.file === '' ? each.do === 'remove' : each.file === step.file)
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
}

function apply(files: Map<string, Buffer>, step: Exclude<Step, { do: 'sync' | 'acknowledged' }>): void {
  const before = files.get(step.file) ?? Buffer.alloc(0)
  if (step.do === 'remove') return void files.delete(step.file)
  const size = step.do === 'truncate' ? step.size : Math.max(before.length, step.at + step.bytes.length)
  const after = size === before.length ? before : Buffer.concat([before.subarray(0, size), Buffer.alloc(Math.max(0, size - before.length))])
  if (step.do === 'write') step.bytes.copy(after, step.at)
  files.set(step.file, after)
}
