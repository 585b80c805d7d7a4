import { Worker } from 'node:worker_threads'
import { StoreProblem } from '../store.ts'
import type { Failure, FromThread, ThreadSetup, ToThread } from './messages.ts'
import type { Opening } from './opening.ts'

interface Opened {
  lastSeq: number
  lastAt: number
  opening: Opening
}
export interface Waiting {
  resolve(value: unknown): void
  reject(error: Error): void
}

/** Room for what lives a moment; the standard 48 MB of each thread would fill a small board for nothing. */
const youngMb = 2

/** One thread of the store seen from outside: numbered calls out, answers in. A thread that dies fails all its calls. */
export class StoreThread {
  readonly #worker: Worker
  readonly #waiting = new Map<number, Waiting>()
  #unanswered = 0
  /** Called when it ends unasked after it was open. */
  readonly #onDeath: () => void
  readonly #onAnswer: () => void
  #nextId = 1
  #isOpen = false
  #gone: StoreProblem | null = null
  #opening: { resolve(opened: Opened): void; reject(error: Error): void } | null = null
  #stopped: (() => void) | null = null

  private constructor(file: string, setup: ThreadSetup, onDeath: () => void, onAnswer: () => void) {
    this.#onDeath = onDeath
    this.#onAnswer = onAnswer
    this.#worker = new Worker(file, { workerData: setup, resourceLimits: { maxYoungGenerationSizeMb: youngMb } })
    this.#worker.on('message', (message: FromThread) => this.#take(message))
    this.#worker.on('error', (error) => this.#end(new StoreProblem('io', `the storage thread failed: ${error.message}`)))
    this.#worker.on('exit', () => this.#end(new StoreProblem('io', 'the storage thread has ended')))
  }

  static async open(
    file: string,
    setup: ThreadSetup,
    onDeath: () => void,
    onAnswer: () => void = () => {},
  ): Promise<{ thread: StoreThread; opened: Opened }> {
    const thread = new StoreThread(file, setup, onDeath, onAnswer)
    const opened = await new Promise<Opened>((resolve, reject) => (thread.#opening = { resolve, reject }))
    return { thread, opened }
  }

  /** Runs the keeper, which answers once and ends. */
  static async once(file: string, setup: ThreadSetup): Promise<unknown> {
    const thread = new StoreThread(
      file,
      setup,
      () => {},
      () => {},
    )
    return new Promise((resolve, reject) => {
      thread.#opening = { resolve, reject }
      thread.#waiting.set(0, { resolve, reject })
    })
  }

  /** Messages on their way that were not answered yet. */
  get unanswered(): number {
    return this.#unanswered
  }

  /** @returns a number for one operation, whose answer settles `call` */
  expect(call: Waiting): number {
    const id = this.#nextId++
    if (this.#gone === null) this.#waiting.set(id, call)
    else call.reject(this.#gone)
    return id
  }

  post(message: ToThread, transfer: ArrayBuffer[] = []): void {
    if (this.#gone !== null) return
    this.#unanswered++
    this.#worker.postMessage(message, transfer)
  }

  async stop(): Promise<void> {
    if (this.#gone !== null) return
    await new Promise<void>((resolve) => {
      this.#stopped = resolve
      this.#worker.postMessage({ stop: true } satisfies ToThread)
    })
  }

  #take(message: FromThread): void {
    if ('done' in message) {
      this.#unanswered -= message.posts ?? 1
      for (const { id, failure, result } of message.done) {
        const call = this.#waiting.get(id)
        this.#waiting.delete(id)
        if (failure === undefined) call?.resolve(result)
        else call?.reject(problemOf(failure))
      }
      this.#onAnswer()
    } else if ('opened' in message) {
      this.#isOpen = true
      this.#opening?.resolve(message.opened)
    } else if ('failedToOpen' in message) this.#opening?.reject(problemOf(message.failedToOpen))
  }

  /** The thread's exit is the end of it; only then are its files closed for certain. */
  #end(problem: StoreProblem): void {
    if (this.#gone !== null) return
    this.#gone = problem
    this.#opening?.reject(problem)
    for (const call of this.#waiting.values()) call.reject(problem)
    this.#waiting.clear()
    if (this.#stopped !== null) this.#stopped()
    else if (this.#isOpen) this.#onDeath()
  }
}

function problemOf(failure: Failure): StoreProblem {
  return new StoreProblem(failure.code, failure.message)
}
