import type { Output } from '../../../contract/fold.ts'
import type { Checkpoint, Quarantined, StoredDocument } from '../../store.ts'
import type { Database, SqlValue } from '../engine.ts'
import { insertSql, rowIsWhole, selectSql, summed, summedTables, whole } from './summed.ts'

const { checkpoint, quarantine, output, document } = summedTables

/** The raw bytes of a refused message are kept up to here (reliability 5). */
const quarantineBytes = 4096
const quarantineRows = 10_000

export function putCheckpoint(database: Database, item: Checkpoint): void {
  database.prepare(insertSql(checkpoint, 'INSERT OR REPLACE')).run(...summed([item.name, item.seq, item.at, item.version, item.bytes]))
  // the one before is kept: should the newest be damaged, a longer stretch of the journal is played again
  const keep = 'SELECT rowid FROM checkpoint WHERE name = ?1 ORDER BY seq DESC, at DESC LIMIT 2'
  database.prepare(`DELETE FROM checkpoint WHERE name = ?1 AND rowid NOT IN (${keep})`).run(item.name)
}

/** The newest whole one of each name. */
export function readCheckpoints(database: Database): Checkpoint[] {
  const newest = new Map<string, Checkpoint>()
  for (const row of database.prepare(selectSql(checkpoint, 'ORDER BY seq DESC, at DESC')).iterate()) {
    const name = String(row['name'])
    if (newest.has(name) || !rowIsWhole(checkpoint, row)) continue
    const bytes = row['bytes'] as Uint8Array
    newest.set(name, { name, seq: Number(row['seq']), at: Number(row['at']), version: Number(row['version']), bytes })
  }
  return [...newest.values()]
}

export function newestCheckpointSeq(database: Database): number {
  return Number(database.prepare('SELECT coalesce(max(seq), 0) AS seq FROM checkpoint').get()?.['seq'])
}

export function putQuarantined(database: Database, items: readonly Quarantined[]): void {
  const insert = database.prepare(insertSql(quarantine))
  for (const item of items) {
    insert.run(...summed([item.at, item.sender, item.topic, item.reason, item.payload.slice(0, quarantineBytes)]))
  }
  database.prepare('DELETE FROM quarantine WHERE rowid <= (SELECT max(rowid) FROM quarantine) - ?').run(quarantineRows)
}

/** The newest first. */
export function readQuarantined(database: Database, limit: number): Quarantined[] {
  const rows = database.prepare(selectSql(quarantine, 'ORDER BY rowid DESC LIMIT ?')).all(limit)
  return rows.map((row) => {
    whole(quarantine, row)
    const payload = row['payload'] as Uint8Array
    return { at: Number(row['at']), sender: String(row['sender']), topic: String(row['topic']), reason: String(row['reason']), payload }
  })
}

export function putOutputs(database: Database, kiln: string, of: string | null, items: readonly Output[]): void {
  const insert = database.prepare(insertSql(output))
  for (const item of items) insert.run(...summed([kiln, item.cause, item.at, item.n, of, JSON.stringify(item)]))
}

/** @param kinds null for all; the engine leaves out the others before anything is read of them: of a day nine in ten are estimates */
export function readOutputs(database: Database, of: string, kinds: readonly Output['kind'][] | null): Output[] {
  const among = kinds === null ? '' : `AND json_extract(json, '$.kind') IN (${kinds.map(() => '?').join(', ')})`
  const rows = database.prepare(selectSql(output, `WHERE firing = ? ${among} ORDER BY at, cause, n`)).all(of, ...(kinds ?? []))
  return rows.map((row) => JSON.parse(String(whole(output, row)['json'])) as Output)
}

/** @returns the revision; the same document twice in a row is one revision, so that a retry is harmless */
export function putDocument(database: Database, item: Omit<StoredDocument, 'revision'>): number {
  const last = database.prepare(selectSql(document, 'WHERE kind = ? AND id = ? ORDER BY revision DESC LIMIT 1')).get(item.kind, item.id)
  if (last !== undefined && last['at'] === item.at && last['by'] === item.by && last['json'] === item.json) return Number(last['revision'])
  const revision = Number(last?.['revision'] ?? 0) + 1
  database.prepare(insertSql(document)).run(...summed([item.kind, item.id, revision, item.at, item.by, item.json]))
  return revision
}

function documentFrom(row: Record<string, SqlValue>): StoredDocument {
  whole(document, row)
  const { kind, id, revision, at, by, json } = row
  return { kind: String(kind), id: String(id), revision: Number(revision), at: Number(at), by: String(by), json: String(json) }
}

/** The newest revision of each document of a kind, by id. */
export function readDocuments(database: Database, kind: string): StoredDocument[] {
  const newest =
    'WHERE kind = ?1 AND revision = (SELECT max(revision) FROM document AS other WHERE other.kind = ?1 AND other.id = document.id) ORDER BY id'
  return database.prepare(selectSql(document, newest)).all(kind).map(documentFrom)
}

/** Every revision, the oldest first. */
export function readHistory(database: Database, kind: string, id: string): StoredDocument[] {
  return database.prepare(selectSql(document, 'WHERE kind = ? AND id = ? ORDER BY revision')).all(kind, id).map(documentFrom)
}
