import type { Rate, Touches, UseId } from '../../../contract/dilution.ts'

export const touches: Record<UseId, Touches> = {
  'leaves-young': 'living-plants',
  'leaves-grown': 'living-plants',
  'flower-fruit': 'living-plants',
  'plant-base': 'living-plants',
  'seedling-trays': 'living-plants',
  'potted-orchids': 'living-plants',
  'seed-soak': 'seed',
  'soil-before-planting': 'bare-soil',
  'bare-ground': 'bare-soil',
  compost: 'compost',
  'pen-smell': 'pens',
  feed: 'animals',
}

const thai = 'Appropriate Technology Association of Thailand, as reprinted from ECHO'
const palace = 'Wood vinegar leaflet, student team with the Chitralada projects'
const trade = 'Japan Wood Vinegar Association, questions and answers'
const grower = 'Japanese grower’s page (routine spraying, nokabegin)'
const crop = 'Japanese plant-activity page (rates by crop stage, naratanka)'
const maker = 'Japanese maker’s page (kmitani)'
const orchid = 'Orchid doses, University of Londrina'
const brazil = 'Brazilian seller’s page (doses, florenceprovegetal)'
// 0.33 to 2 % by volume
const review = 'Silva et al., review of soil use in Brazil 1989 to 2017 (the crude form is not to be used)'
const outlier = 'Advice page (kantankafarms); contradicts the rule that anything stronger than 100-fold kills growing plants'

type Row = [
  use: UseId,
  crop: string | null,
  convention: 'parts' | 'fold',
  from: number,
  to: number,
  source: string,
  sureness: Rate['sureness'],
  more?: Partial<Pick<Rate, 'everyDays' | 'litresPerM2' | 'beforePlantingDays' | 'kind' | 'offered'>>,
]

/** Published practice, each row with its source and its own way of counting; no row says what it is good for. */
const rows: readonly Row[] = [
  ['leaves-grown', null, 'fold', 500, 1000, grower, 'middle', { everyDays: [7, 10], litresPerM2: 0.1 }],
  ['leaves-grown', 'leafy vegetables', 'fold', 300, 500, crop, 'low', { everyDays: [5, 5] }],
  ['leaves-grown', 'fruiting vegetables', 'fold', 300, 500, crop, 'low', { everyDays: [10, 15] }],
  ['leaves-grown', 'onions', 'fold', 300, 300, crop, 'low'],
  ['leaves-grown', 'maize', 'parts', 300, 300, thai, 'middle'],
  ['leaves-grown', 'cabbage', 'parts', 1500, 1500, thai, 'middle'],
  ['leaves-grown', 'tomato, cucumber', 'parts', 200, 200, thai, 'middle'],
  ['leaves-grown', null, 'parts', 400, 400, palace, 'middle'],
  ['leaves-grown', null, 'parts', 100, 500, brazil, 'middle'],
  ['leaves-grown', null, 'parts', 20, 20, outlier, 'low', { kind: 'common-practice', offered: false }],
  ['leaves-young', 'leafy vegetables', 'fold', 800, 1000, crop, 'low', { everyDays: [5, 5] }],
  ['leaves-young', 'onions', 'fold', 800, 1000, crop, 'low'],
  ['leaves-young', 'fruiting vegetables', 'fold', 500, 500, crop, 'low'],
  ['leaves-young', 'cabbage seedlings', 'fold', 2000, 2000, crop, 'low', { everyDays: [7, 7] }],
  ['flower-fruit', 'chilli', 'parts', 300, 300, thai, 'middle'],
  ['flower-fruit', null, 'parts', 500, 1000, thai, 'middle'],
  ['flower-fruit', null, 'parts', 500, 500, palace, 'middle'],
  ['plant-base', null, 'parts', 100, 100, palace, 'middle'],
  ['plant-base', null, 'parts', 200, 200, palace, 'middle'],
  ['plant-base', 'tomato, cucumber', 'parts', 200, 200, thai, 'middle'],
  ['plant-base', 'tomato', 'parts', 500, 500, thai, 'middle'],
  ['plant-base', 'strawberry', 'parts', 200, 200, thai, 'middle'],
  ['plant-base', 'pepper', 'parts', 1500, 1500, thai, 'middle'],
  ['seedling-trays', 'rice', 'fold', 200, 200, trade, 'middle'],
  // 0.1 to 0.6 % by volume, 50 mL a pot every 30 days
  ['potted-orchids', null, 'fold', 1000 / 6, 1000, orchid, 'middle', { everyDays: [30, 30] }],
  ['seed-soak', 'rice, 24 h', 'fold', 50, 50, trade, 'middle'],
  ['soil-before-planting', null, 'fold', 20, 30, trade, 'high', { beforePlantingDays: [10, 14] }],
  ['soil-before-planting', null, 'parts', 30, 30, thai, 'middle', { litresPerM2: 6 }],
  ['soil-before-planting', null, 'parts', 5, 5, thai, 'middle'],
  ['soil-before-planting', null, 'fold', 5, 10, maker, 'low', { beforePlantingDays: [5, 7] }],
  ['soil-before-planting', null, 'parts', 20, 20, palace, 'middle'],
  ['bare-ground', null, 'parts', 50, 50, palace, 'middle'],
  ['compost', null, 'parts', 100, 100, thai, 'middle'],
  ['pen-smell', null, 'parts', 50, 50, thai, 'middle'],
  ['pen-smell', null, 'fold', 30, 100, maker, 'middle'],
  ['feed', null, 'parts', 200, 300, thai, 'low', { offered: false }],
  ['soil-before-planting', null, 'fold', 50, 303, review, 'middle'],
  ['leaves-grown', null, 'fold', 200, 200, maker, 'low'],
]

export const rates: readonly Rate[] = rows.map(([use, ofCrop, convention, from, to, source, sureness, more], index) => ({
  id: `${use}-${String(index + 1)}`,
  use,
  crop: ofCrop,
  convention,
  from,
  to,
  everyDays: null,
  litresPerM2: null,
  beforePlantingDays: null,
  kind: 'published',
  source,
  sureness,
  offered: true,
  ...more,
}))
