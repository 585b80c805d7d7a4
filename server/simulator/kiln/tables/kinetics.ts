// First-order steps k = A exp(-E / RT); A in 1/s, E in J/mol.

export interface Step {
  a: number
  e: number
}

/** Miller and Bellan 1997 (trade facts 9.1.6): per component activation, tar, char with gas, and the char share of the last. */
export const components: readonly { activation: Step; tar: Step; char: Step; charShare: number }[] = [
  { activation: { a: 2.8e19, e: 242400 }, tar: { a: 3.28e14, e: 196500 }, char: { a: 1.3e10, e: 150500 }, charShare: 0.35 },
  { activation: { a: 2.1e16, e: 186700 }, tar: { a: 8.75e15, e: 202400 }, char: { a: 2.6e11, e: 145700 }, charShare: 0.6 },
  { activation: { a: 9.6e8, e: 107600 }, tar: { a: 1.5e9, e: 143800 }, char: { a: 7.7e6, e: 111400 }, charShare: 0.75 },
]

/** Tar cracking in the gas, Miller and Bellan 1997 (trade facts 9.1.6). */
export const cracking: Step = { a: 4.28e6, e: 108000 }

/** One-lump schemes of three competing ways (trade facts 9.1.1, 9.1.2, 9.1.3). */
export const lumped = {
  'thurner-mann': { gas: { a: 1.44e4, e: 88600 }, tar: { a: 4.13e6, e: 112700 }, char: { a: 7.38e5, e: 106500 } },
  chan: { gas: { a: 1.3e8, e: 140000 }, tar: { a: 2.0e8, e: 133000 }, char: { a: 1.08e7, e: 121000 } },
  'di-blasi': { gas: { a: 4.38e9, e: 152700 }, tar: { a: 1.08e10, e: 148000 }, char: { a: 3.27e6, e: 111700 } },
} as const satisfies Record<string, { gas: Step; tar: Step; char: Step }>

export type LumpedScheme = keyof typeof lumped

const gasConstant = 8.314

/** Rate at a temperature, 1/s. */
export function rate(step: Step, tC: number): number {
  return step.a * Math.exp(-step.e / (gasConstant * (tC + 273.15)))
}
