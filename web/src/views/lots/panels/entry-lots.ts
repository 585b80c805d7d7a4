import type { LotEvent } from '../../../../../server/contract/lots.ts'

/** Every lot that an event names, giving or taking. */
export function lotsOf(event: LotEvent): string[] {
  switch (event.what) {
    case 'void':
      return []
    case 'join':
      return [event.lot, ...event.from.map((part) => part.lot)]
    case 'split':
      return [event.lot, ...event.into.map((part) => part.lot)]
    case 'draw':
      return event.into === undefined ? [event.lot] : [event.lot, event.into.lot]
    default:
      return [event.lot]
  }
}
