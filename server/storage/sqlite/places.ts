import { closeSync, fsyncSync, openSync } from 'node:fs'
import { join } from 'node:path'

/** Where the files of a store lie in its data folder. */
export interface Places {
  folder: string
  database: string
  lock: string
  ballast: string
  backups: string
  setAside: string
  /** Written when a row did not match its sum: the next start checks everything. */
  doubt: string
  /** There while a store is open: found at a start, the one before did not end in order. */
  open: string
}

export function placesIn(folder: string): Places {
  return {
    folder,
    database: join(folder, 'kiln.db'),
    lock: join(folder, 'lock.db'),
    ballast: join(folder, 'ballast'),
    backups: join(folder, 'backups'),
    setAside: join(folder, 'set-aside'),
    doubt: join(folder, 'check-all'),
    open: join(folder, 'open'),
  }
}

/** Makes a file's content, or a folder's new names, survive a power cut. */
export function syncPath(path: string): void {
  const handle = openSync(path, 'r')
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}
