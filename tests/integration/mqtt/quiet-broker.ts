import type { Broker } from '../../../server/mqtt/broker.ts'
import { createBroker, type EmbeddedOptions } from '../../../server/mqtt/embedded.ts'

/** The embedded broker on a free port of this machine, with a log that says nothing and nobody who keeps what comes; `over` changes any of it. */
export function quietBroker(over: Partial<EmbeddedOptions> = {}): Broker {
  return createBroker({
    host: '127.0.0.1',
    port: 0,
    root: 'firing',
    site: 'yard',
    log: { info: () => {}, warn: () => {} },
    onMessage: async () => {},
    ...over,
  })
}

/** For the protocol alone: every topic is free. */
export const anyTopic: NonNullable<EmbeddedOptions['policy']> = {
  publish: (_topic, node) => ({ verdict: 'take', reason: '', node, share: true }),
  subscribe: () => true,
}
