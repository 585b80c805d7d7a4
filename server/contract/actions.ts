import type { ActId, ChannelId } from './fold.ts'
import type { AlarmCode, DripLook, Opening, SmokeLook, Weather } from './vocabulary.ts'

/** What a person did or saw, as recordings carry it. */
export type Action =
  | { action: 'load'; massKg?: number; moisturePct?: number; pieceMm?: number; drumC?: number; earthC?: number }
  | { action: 'light' }
  | { action: 'start-collecting' }
  | { action: 'stop-collecting' }
  | { action: 'refuel' }
  | { action: 'wet-condenser' }
  | { action: 'swap-bottle'; litres?: number }
  | { action: 'stop-feeding' }
  | { action: 'air'; mouth?: Opening; chimney?: Opening }
  | { action: 'refine' }
  | { action: 'weather'; weather: Weather }
  | { action: 'seal' }
  | { action: 'crack' }
  | { action: 'reseal' }
  | { action: 'open' }
  | { action: 'unload'; charcoalKg?: number; finesKg?: number }
  /** `photo`: the service keeps a picture of it under the id of this act. */
  | { action: 'glass'; number: number; drip?: DripLook; photo?: boolean }
  | { action: 'observe'; smoke?: SmokeLook; drip?: DripLook }
  | { action: 'note'; text: string }
  /** A reading taken with a hand thermometer. */
  | { action: 'reading'; channel: ChannelId; value: number }
  /** Tablet and buzzer were heard; only an armed firing complains of the operator. */
  | { action: 'arm'; tablet?: boolean; buzzer?: boolean }
  | { action: 'acknowledge'; alarm: AlarmCode; channel?: ChannelId }
  | { action: 'shelve'; alarm: AlarmCode; channel?: ChannelId; minutes: number }
  | { action: 'unshelve'; alarm: AlarmCode; channel?: ChannelId }

export type ActionName = Action['action']

export const actionNames = [
  'load',
  'light',
  'start-collecting',
  'stop-collecting',
  'refuel',
  'wet-condenser',
  'swap-bottle',
  'stop-feeding',
  'air',
  'refine',
  'weather',
  'seal',
  'crack',
  'reseal',
  'open',
  'unload',
  'glass',
  'observe',
  'note',
  'reading',
  'arm',
  'acknowledge',
  'shelve',
  'unshelve',
] as const satisfies readonly ActionName[]

/** One action as it was entered: nothing is erased, a correction is a later entry that names the earlier one. */
export interface Act {
  id: ActId
  at: number
  doneAt: number
  act: Action
  corrects?: ActId
}
