import { statSync } from 'node:fs'
import { StoreProblem } from '../store.ts'
import { pragma, type Database } from './engine.ts'
import { problemFrom } from './problems.ts'
import { damagedRows, summedTables, type SummedTable } from './tables/summed.ts'
import { damagedMinutes } from './tables/points.ts'
import { checkFirings } from './tables/firings.ts'
import { readCheckpoints } from './tables/records.ts'
import { readJournal } from './tables/journal.ts'

/** A check reads the whole file; above these it would hold up the start, and the check of the next backup has to do. */
const checkAllBytes = 16 << 20
const checkStructureBytes = 64 << 20
const pageRows = 2000

function checkStructure(database: Database): void {
  const answer = pragma(database, 'integrity_check(1)')
  if (answer !== 'ok') throw new StoreProblem('damaged', String(answer))
}

/** Everything in a small file; in a large one what a start reads anyway, which is the tail of the journal behind the checkpoints. */
export function checkForStart(database: Database, file: string): void {
  const { size } = statSync(file)
  if (size <= checkAllBytes) return checkAll(database)
  if (size <= checkStructureBytes) checkStructure(database)
  const names = Number(database.prepare('SELECT count(DISTINCT name) AS names FROM checkpoint').get()?.['names'])
  const checkpoints = readCheckpoints(database)
  if (checkpoints.length < names) throw new StoreProblem('damaged', 'a checkpoint does not match its sum')
  checkFirings(database)
  checkJournal(database, checkpoints.length === 0 ? 0 : Math.min(...checkpoints.map((checkpoint) => checkpoint.seq)))
}

export function checkJournal(database: Database, after: number): void {
  for (let from = after; ;) {
    const page = readJournal(database, from, Number.MAX_SAFE_INTEGER, pageRows)
    const last = page.at(-1)
    if (last === undefined) return
    from = last.seq
  }
}

/** Structure, every row of every table, every point. @throws StoreProblem `damaged` */
export function checkAll(database: Database): void {
  try {
    checkStructure(database)
    for (const table of tablesOf(database)) {
      if (damagedRows(database, table, 1) > 0) throw new StoreProblem('damaged', `a row of ${table.name} does not match its sum`)
    }
    if (damagedMinutes(database) > 0) throw new StoreProblem('damaged', 'points do not match their sum')
    checkJournal(database, 0)
  } catch (error) {
    throw asDamage(error)
  }
}

/** The tables that a file has: one of an older schema is checked before it is brought to the newest. */
export function tablesOf(database: Database): SummedTable[] {
  const there = new Set(
    database
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table'")
      .all()
      .map((row) => row['name']),
  )
  return Object.values(summedTables).filter(({ name }) => there.has(name))
}

/** While checking, whatever the engine can not read counts as damage; a full or busy disk does not. */
export function asDamage(error: unknown): StoreProblem {
  const problem = problemFrom(error)
  return problem.code === 'unknown' ? new StoreProblem('damaged', problem.message) : problem
}
