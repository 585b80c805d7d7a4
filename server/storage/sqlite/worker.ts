import { mkdirSync, writeFileSync } from 'node:fs'
import { parentPort, receiveMessageOnPort, workerData, type MessagePort } from 'node:worker_threads'
import { backUp } from './backup.ts'
import { Ballast } from './ballast.ts'
import { openDatabase } from './engine.ts'
import { lockFolder } from './lock.ts'
import type { FromThread, ThreadSetup, ToThread, WriteOperation } from './messages.ts'
import { openStore } from './opening.ts'
import { placesIn, type Places } from './places.ts'
import { problemFrom } from './problems.ts'
import { answer } from './queries.ts'
import { Writer } from './writer.ts'

/** Entries that are company enough to commit at once. */
const fullBatch = 200

function failureOf(error: unknown) {
  const { code, message } = problemFrom(error)
  return { code, message }
}

function runWriter(port: MessagePort, setup: ThreadSetup, places: Places): void {
  mkdirSync(places.folder, { recursive: true })
  const lock = lockFolder(places.lock)
  const { database, opening } = openStore(places, setup.nowMs)
  const writer = new Writer(places.database, database, new Ballast(places.ballast, setup.ballastBytes))
  const last = writer.last()
  const say = (message: FromThread) => port.postMessage(message)
  say({ opened: { lastSeq: last.seq, lastAt: last.at, opening } })

  let waiting: WriteOperation[] = []
  let entries = 0
  let timer: NodeJS.Timeout | null = null
  let due = false
  let stopping = false
  let lastCommitMs = 0

  const take = (message: ToThread) => {
    if ('writes' in message) {
      for (const operation of message.writes) {
        waiting.push(operation)
        entries += operation.op === 'append' ? operation.count : 1
        due ||= operation.urgent
      }
    } else if ('stop' in message) stopping = true
    due ||= stopping || entries >= fullBatch
  }
  const flush = () => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    // what arrived while the last batch was synced goes along
    for (let more = receiveMessageOnPort(port); more !== undefined; more = receiveMessageOnPort(port)) take(more.message as ToThread)
    const batch = waiting
    waiting = []
    entries = 0
    due = false
    if (batch.length > 0) {
      const began = performance.now()
      say({ done: writer.commit(batch) })
      lastCommitMs = performance.now() - began
    }
    if (stopping) stop()
  }
  const stop = () => {
    try {
      writer.close()
      lock.close()
    } finally {
      say({ stopped: true })
      port.close()
    }
  }
  port.on('message', (message: ToThread) => {
    take(message)
    // on a slow disk company gathers while it syncs: no need to wait for more
    if (due || lastCommitMs >= setup.windowMs) flush()
    else timer ??= setTimeout(flush, setup.windowMs)
  })
}

function runReader(port: MessagePort, places: Places): void {
  const database = openDatabase(places.database, 'read')
  const say = (message: FromThread) => port.postMessage(message)
  port.on('message', (message: ToThread) => {
    if ('ask' in message) {
      try {
        say({ done: [{ id: message.id, result: answer(database, message.ask) }] })
      } catch (error) {
        const failure = failureOf(error)
        if (failure.code === 'damaged') writeFileSync(places.doubt, failure.message)
        say({ done: [{ id: message.id, failure }] })
      }
    } else if ('stop' in message) {
      database.close()
      say({ stopped: true })
      port.close()
    }
  })
  say({ opened: { lastSeq: 0, lastAt: 0, opening: { setAside: null, restoredFrom: null, salvaged: null, why: null } } })
}

/** Makes one backup and ends. */
function runKeeper(port: MessagePort, setup: ThreadSetup, places: Places): void {
  try {
    const result = backUp(places, setup.nowMs)
    port.postMessage({ done: [{ id: 0, result }] } satisfies FromThread)
  } catch (error) {
    const failure = failureOf(error)
    if (failure.code === 'damaged') writeFileSync(places.doubt, failure.message)
    port.postMessage({ done: [{ id: 0, failure }] } satisfies FromThread)
  }
}

if (parentPort !== null) {
  const setup = workerData as ThreadSetup
  const places = placesIn(setup.folder)
  try {
    if (setup.role === 'writer') runWriter(parentPort, setup, places)
    else if (setup.role === 'reader') runReader(parentPort, places)
    else runKeeper(parentPort, setup, places)
  } catch (error) {
    parentPort.postMessage({ failedToOpen: failureOf(error) } satisfies FromThread)
    parentPort.close()
  }
}
