import * as L from '../../../../server/domain/kiln/layout.ts'
import { solidCp, type Books } from '../../../../server/domain/kiln/zone.ts'
import { waterCp } from '../../../../server/domain/kiln/water.ts'
import { steelHeat } from '../../../../server/domain/kiln/step.ts'
import { at } from '../../../../server/domain/kiln/parameters.ts'

export function emptyBooks(): Books {
  return { waterIn: 0, waterOut: 0, acidOut: 0, tarOut: 0, gasOut: 0, heatIn: 0, heatOut: 0, heatLost: 0, heatMade: 0 }
}

const cell = (x: Float64Array, z: number, k: number): number => x[z * L.zoneStride + k] ?? NaN

/** Solids, water and what is held, kg. */
export function massOf(x: Float64Array): number {
  let sum = 0
  for (let z = 0; z < L.zoneCount; z++) for (let k = L.surfaceWater; k <= L.heldAcid; k++) sum += cell(x, z, k)
  return sum
}

/** Heat over 0 °C of wood, water, drum and earth, kJ. */
export function heatOf(x: Float64Array, p: Float64Array): number {
  let sum = 0
  for (let z = 0; z < L.zoneCount; z++) {
    const solids = (from: number, char: number): number => cell(x, z, from) + cell(x, z, from + 1) + cell(x, z, from + 2) + cell(x, z, char)
    const held = cell(x, z, L.heldTar) + cell(x, z, L.heldAcid)
    sum += (solidCp * (solids(L.surfaceParts, L.surfaceChar) + held) + waterCp * cell(x, z, L.surfaceWater)) * cell(x, z, L.surfaceC)
    sum += (solidCp * solids(L.coreParts, L.coreChar) + waterCp * cell(x, z, L.coreWater)) * cell(x, z, L.coreC)
    sum += (steelHeat / L.zoneCount) * cell(x, z, L.wallC)
    sum += ((p[at.earthHeat] ?? NaN) / L.zoneCount) * cell(x, z, L.earthC)
  }
  return sum
}
