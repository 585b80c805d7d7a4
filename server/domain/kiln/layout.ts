/** Zones along the way of the gas, from the mouth (0) to the chimney. */
export const zoneCount = 10

// One zone's state in a flat array, offsets: °C and kg.
export const surfaceC = 0
export const coreC = 1
export const surfaceWater = 2
export const coreWater = 3
export const surfaceParts = 4 // hemicellulose, cellulose, lignin
export const coreParts = 7
export const surfaceChar = 10
export const coreChar = 11
export const heldTar = 12 // condensed on cool wood
export const heldAcid = 13 // dissolved in the surface water or standing on the wood
export const wallC = 14
export const earthC = 15
export const zoneStride = 16

// After the zones: what the kiln as a whole remembers.
const tail = zoneCount * zoneStride
/** Condensate of the moment, averaged over about eight minutes, kg/s. */
export const meanWater = tail
export const meanAcid = tail + 1
export const meanTar = tail + 2
/** Collected since lighting if all of it were caught, kg. */
export const condensate = tail + 3
/** Smoke at the chimney's mouth and the drum wall as their probes would read, °C. */
export const smokeProbeC = tail + 4
export const wallProbeC = tail + 5
/** Smoke itself, °C. */
export const smokeC = tail + 6
export const stateLength = tail + 8
