import type { CondensateLot } from '../../../../server/contract/lots.ts'

/** Inside of the drawn vessel between its bottom and its shoulder, in units of the drawing. */
const bottomY = 334
const shoulderY = 92

export interface Band {
  name: 'tar' | 'vinegar' | 'oil' | 'whole'
  ml: number
  top: number
  height: number
}
export interface BandLabel {
  name: 'tar' | 'vinegar' | 'lightOil' | 'whole'
  ml: number
  /** Where the layer is. */
  at: number
  /** Where its words stand, moved apart so that they never touch. */
  y: number
  main: boolean
}

/** Layers from the bottom at the heights that their volumes have in this vessel; one layer while nobody has measured. */
export function layersIn(lot: Pick<CondensateLot, 'layers' | 'volumeMl' | 'vessel'>): { bands: Band[]; labels: BandLabel[] } {
  const perMl = (bottomY - shoulderY) / Math.max(1, lot.vessel.capacityMl)
  const { layers } = lot
  const stack: { name: Band['name']; ml: number }[] =
    layers === null
      ? [{ name: 'whole', ml: lot.volumeMl }]
      : [
          { name: 'tar', ml: layers.tarMl },
          { name: 'vinegar', ml: layers.vinegarMl },
          { name: 'oil', ml: layers.lightOilMl },
        ]
  const bands: Band[] = []
  let top = bottomY
  for (const { name, ml } of stack) {
    const height = ml * perMl
    top -= height
    bands.push({ name, ml, top, height })
  }
  return { bands, labels: labelled(bands) }
}

function labelled(bands: readonly Band[]): BandLabel[] {
  const gap = 58
  let lowest = bottomY - 6
  return bands
    .filter(({ ml }) => ml > 0)
    .map((band) => {
      const at = band.top + band.height / 2
      const y = Math.min(at, lowest)
      lowest = y - gap
      return {
        name: band.name === 'oil' ? 'lightOil' : band.name,
        ml: band.ml,
        at,
        y,
        main: band.name === 'vinegar' || band.name === 'whole',
      }
    })
}
