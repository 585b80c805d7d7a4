import type { TurnedAway } from '../contract/setup.ts'

/** One message as a node sent it. */
export interface Incoming {
  topic: string
  payload: Uint8Array
  qos: 0 | 1 | 2
  /** Played from a broker's store, so of unknown age. A live message with the flag set is not this. */
  retained: boolean
  client: string
}

/** What was acknowledged, so that its sender does not send it for ever, but may not go on its way. */
export interface Refused {
  sender: string
  topic: string
  reason: string
  payload: Uint8Array
}

export interface Said {
  topic: string
  payload: string
  qos: 0 | 1
  retain: boolean
}

export interface Log {
  info(fields: object, text: string): void
  warn(fields: object, text: string): void
}

export interface BrokerEars {
  /** QoS 1 is acknowledged when the promise resolves; when it rejects the connection is closed unanswered and the node sends again. */
  onMessage(message: Incoming): Promise<void>
  onRefused?(refused: Refused): Promise<void>
  log: Log
}

/** The one door to the nodes, whether the broker is ours or another's. */
export interface Broker {
  /** @param retained what stands now: published before anybody is let in, and again after each reconnection */
  start(retained?: readonly Said[]): Promise<{ port: number | null }>
  stop(): Promise<void>
  publish(said: Said): Promise<void>
  /** Names of the connected clients; empty where the broker is another's. */
  clients(): string[]
  /** What was turned away since the start; where the broker is another's only topics that the subscription brought. */
  turnedAway(): TurnedAway
  /** Ends the connections that could not come in any more as they did: after a secret was renewed, confirmed or removed. Nothing where the broker is another's. */
  review(): void
}

export type BrokerProblemCode = 'port-taken' | 'port-forbidden' | 'no-such-address' | 'unknown'

export class BrokerProblem extends Error {
  readonly code: BrokerProblemCode
  constructor(code: BrokerProblemCode, message: string) {
    super(message)
    this.name = 'BrokerProblem'
    this.code = code
  }
}
