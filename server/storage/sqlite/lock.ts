import { StoreProblem } from '../store.ts'
import { loadEngine, type Database } from './engine.ts'
import { problemFrom } from './problems.ts'

/**
 * Holds the data folder for this process: an open exclusive transaction on a small file of its own, which the system drops when the
 * process dies, however it dies.
 * @throws StoreProblem `in-use` when another process holds it
 */
export function lockFolder(file: string): Database {
  const lock = new (loadEngine().DatabaseSync)(file, { timeout: 0 })
  try {
    lock.exec('BEGIN EXCLUSIVE')
    return lock
  } catch (error) {
    lock.close()
    const problem = problemFrom(error)
    throw problem.code === 'busy' ? new StoreProblem('in-use', 'another instance of this program uses the data folder') : problem
  }
}
