import type { KilnView } from '../../../../server/contract/live.ts'

/**
 * One kiln, each part a signal of its own: a new reading redraws its number and nothing that hangs on another part.
 * The parts are accessors, so a spread of it is empty.
 */
export class KilnParts implements KilnView {
  firing: KilnView['firing']
  channels: KilnView['channels']
  command: KilnView['command']
  calls: KilnView['calls']
  alarms: KilnView['alarms']
  estimate: KilnView['estimate']
  forecast: KilnView['forecast']
  hints: KilnView['hints']
  hands: KilnView['hands']

  constructor(view: KilnView) {
    this.firing = $state.raw(view.firing)
    this.channels = $state.raw(view.channels)
    this.command = $state.raw(view.command)
    this.calls = $state.raw(view.calls)
    this.alarms = $state.raw(view.alarms)
    this.estimate = $state.raw(view.estimate)
    this.forecast = $state.raw(view.forecast)
    this.hints = $state.raw(view.hints)
    this.hands = $state.raw(view.hands)
  }
}
