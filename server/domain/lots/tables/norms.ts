import type { Clarity, Colour, NormId } from '../../../contract/lots.ts'

interface Band {
  low: number
  high: number | null
  source: string
}

/** A norm as far as its text was read; a clause that is not here is not asked. */
export interface Norm {
  id: NormId
  sureness: 'high' | 'middle' | 'low'
  ph?: Band
  /** g/mL at `referenceC`. `assumed`: the text read does not state the temperature. */
  density?: Band & { referenceC: number; reference: 'stated' | 'assumed' }
  /** % as acetic acid. */
  acidity?: Band
  colour?: { wanted: readonly Colour[]; source: string }
  clarity?: { wanted: readonly Clarity[]; source: string }
  dissolvedTar?: Band
  /** Smoke at the mouth of the chimney, low included, high not. */
  smoke?: { fromC: number; belowC: number; source: string }
  rest?: { days: number; source: string }
  rawMaterial?: { source: string }
  vessel?: { source: string }
}

const council = 'Certification council of the Japanese wood and bamboo vinegar trade, standard of 29 Nov 2006'
const producer = 'Japanese producer norm (oak, clay kiln)'
const handbook = 'Charcoal Handbook criteria, in Theapparat et al.'
const bamboo = 'GB/T 31734-2015, bamboo vinegar (excerpt; its numbers were not read)'

const councilColours = ['yellow', 'pale-red-brown', 'red-brown'] as const

export const norms: Record<NormId, Norm> = {
  council: {
    id: 'council',
    sureness: 'high',
    ph: { low: 1.5, high: 3.7, source: `${council}: pH` },
    density: { low: 1.005, high: null, referenceC: 15, reference: 'assumed', source: `${council}: specific gravity` },
    acidity: { low: 2, high: 12, source: `${council}: acidity` },
    colour: { wanted: councilColours, source: `${council}: colour` },
    clarity: { wanted: ['clear'], source: `${council}: transparency, no floating matter` },
    smoke: { fromC: 80, belowC: 150, source: `${council}: temperature at the exhaust mouth` },
    rest: { days: 90, source: `${council}: standing` },
    rawMaterial: { source: `${council}: raw material` },
    vessel: { source: `${council}: equipment` },
  },
  'council-distilled': {
    id: 'council-distilled',
    sureness: 'high',
    ph: { low: 1.5, high: 3.7, source: `${council}: pH` },
    density: { low: 1.001, high: null, referenceC: 15, reference: 'assumed', source: `${council}: specific gravity, distilled` },
    acidity: { low: 2, high: 12, source: `${council}: acidity` },
    colour: { wanted: ['colourless', 'pale-yellow', 'pale-red-brown'], source: `${council}: colour, distilled` },
    clarity: { wanted: ['clear'], source: `${council}: transparency, no floating matter` },
    rest: { days: 90, source: `${council}: standing` },
    rawMaterial: { source: `${council}: raw material` },
    vessel: { source: `${council}: equipment` },
  },
  producer: {
    id: 'producer',
    sureness: 'low',
    density: { low: 1.002, high: 1.0025, referenceC: 25, reference: 'stated', source: `${producer}: density at 25, as printed` },
    acidity: { low: 2.5, high: 5, source: `${producer}: acidity` },
    colour: { wanted: ['pale-red-brown', 'red-brown'], source: `${producer}: colour` },
    clarity: { wanted: ['clear'], source: `${producer}: clarity` },
    smoke: { fromC: 80, belowC: 120, source: `${producer}: temperature` },
    rest: { days: 180, source: `${producer}: standing` },
  },
  handbook: {
    id: 'handbook',
    sureness: 'middle',
    // the text says "about 3"; half a unit each way is our reading
    ph: { low: 2.5, high: 3.5, source: `${handbook}: pH about 3` },
    density: { low: 1.01, high: 1.05, referenceC: 15, reference: 'assumed', source: `${handbook}: density` },
    dissolvedTar: { low: 0, high: 3, source: `${handbook}: total soluble tar` },
    clarity: { wanted: ['clear'], source: `${handbook}: transparency` },
  },
  'bamboo-refined': {
    id: 'bamboo-refined',
    sureness: 'middle',
    colour: { wanted: ['pale-red-brown', 'red-brown'], source: `${bamboo}: colour` },
    clarity: { wanted: ['clear'], source: `${bamboo}: clarity` },
    rest: { days: 180, source: `${bamboo}: sealed rest` },
  },
}
