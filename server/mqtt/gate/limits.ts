/** What one connection, one address and all together may ask of the gate (reliability, section 5). */
export interface GateLimits {
  packetBytes: number
  /** Before login nothing but a CONNECT is read. */
  connectBytes: number
  connectWithinMs: number
  packetWithinMs: number
  connections: number
  connectionsPerAddress: number
  /** Of what a client begins: messages, subscriptions, pings. */
  messagesPerS: number
  burst: number
  takeoversPerMin: number
  subscriptions: number
  drainWithinMs: number
  /** Messages that wait for an absent client. */
  waiting: number
  /** Topics of nodes whose last message is kept. */
  retained: number
}

export const gateLimits: GateLimits = {
  packetBytes: 64 * 1024, // class 1
  connectBytes: 1024, // class 1
  connectWithinMs: 5000, // class 25
  packetWithinMs: 10_000, // class 2
  connections: 200, // class 25
  connectionsPerAddress: 20, // class 25
  messagesPerS: 50, // class 24
  burst: 500, // common practice, no source: a node that comes back brings its backlog at once
  takeoversPerMin: 5, // class 26
  subscriptions: 16, // class 22
  drainWithinMs: 10_000, // class 27
  waiting: 100, // class 23
  retained: 200, // class 21
}
