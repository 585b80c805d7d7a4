import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { parentPort, receiveMessageOnPort, workerData, type MessagePort } from 'node:worker_threads'
import { backUp } from './backup.ts'
import { Ballast } from './ballast.ts'
import { openDatabase } from './engine.ts'
import { lockFolder } from './lock.ts'
import type { FromThread, ThreadSetup, ToThread, WriteOperation } from './messages.ts'
import { openStore, ordinary } from './opening.ts'
import { placesIn, type Places } from './places.ts'
import { problemFrom } from './problems.ts'
import { answer } from './queries.ts'
import { Writer } from './writer.ts'

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
  let posts = 0
  let stopping = false

  const take = (message: ToThread) => {
    if ('writes' in message) {
      waiting.push(...message.writes)
      posts++
    } else if ('stop' in message) stopping = true
  }
  const stop = () => {
    try {
      writer.close()
      rmSync(places.open, { force: true })
      lock.close()
    } finally {
      port.close()
    }
  }
  port.on('message', (first: ToThread) => {
    take(first)
    // what arrived while the last batch was synced goes along
    for (let more = receiveMessageOnPort(port); more !== undefined; more = receiveMessageOnPort(port)) take(more.message as ToThread)
    const batch = waiting
    waiting = []
    if (batch.length > 0) say({ done: writer.commit(batch), posts })
    posts = 0
    if (stopping) stop()
  })
}

function runReader(port: MessagePort, places: Places): void {
  const database = openDatabase(places.database, 'read')
  const say = (message: FromThread) => port.postMessage(message)
  port.on('message', (message: ToThread) => {
    if ('ask' in message) {
      try {
        const result = answer(database, message.ask)
        // entries are handed over as they lie; a copy would be garbage of the same size again
        port.postMessage(
          { done: [{ id: message.id, result }] } satisfies FromThread,
          result instanceof Uint8Array ? [result.buffer as ArrayBuffer] : [],
        )
      } catch (error) {
        const failure = failureOf(error)
        if (failure.code === 'damaged') writeFileSync(places.doubt, failure.message)
        say({ done: [{ id: message.id, failure }] })
      }
    } else if ('stop' in message) {
      database.close()
      port.close()
    }
  })
  say({ opened: { lastSeq: 0, lastAt: 0, opening: ordinary } })
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
