/** What the rooms need of a log; pino fits. */
export interface Log {
  info(facts: object, what: string): void
  warn(facts: object, what: string): void
  error(facts: object, what: string): void
}

export const silentLog: Log = { info() {}, warn() {}, error() {} }
