import type { ChannelId, Ms, Output, Reason } from '../contract/fold.ts'
import type { AlarmCode, AlarmState, Priority } from '../contract/vocabulary.ts'

/** An alarm from its first coming to its last end; where it came again within the same phase, counted. */
export interface AlarmSpan {
  alarm: AlarmCode
  channel: ChannelId | undefined
  priority: Priority
  times: number
  from: Ms
  /** Null where the recording ended first. */
  to: Ms | null
  seenAt: Ms | null
  because: Reason[]
}

const over: readonly AlarmState[] = [
  'normal',
  'returned-unacknowledged',
  'latched-unacknowledged',
  'latched-acknowledged',
  'suppressed',
  'out-of-service',
]

export function alarmSpans(outputs: readonly Output[]): AlarmSpan[] {
  const spans: AlarmSpan[] = []
  const standing = new Map<string, AlarmSpan>()
  for (const output of outputs) {
    if (output.kind === 'phase') for (const [key, span] of standing) if (span.to !== null) standing.delete(key)
    if (output.kind !== 'alarm') continue
    const { alarm, channel, priority, at, because, state } = output
    const key = `${alarm} ${channel ?? ''}`
    const span = standing.get(key)
    if (state === 'unacknowledged' && !span) {
      const fresh: AlarmSpan = { alarm, channel, priority, times: 1, from: at, to: null, seenAt: null, because }
      standing.set(key, fresh)
      spans.push(fresh)
    } else if (state === 'unacknowledged' && span?.to !== null && span) {
      span.times++
      span.to = null
    } else if (span && over.includes(state)) span.to ??= at
    else if (span && state === 'acknowledged') span.seenAt ??= at
  }
  return spans
}
