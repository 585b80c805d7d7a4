/** IEC 60751, alpha 3.85e-3 (instrument facts 2.7). */
const pt = { a: 3.9083e-3, b: -5.775e-7, c: -4.183e-12, ohmAt0C: 100, fromC: -200, toC: 850 }

/** Resistance of a Pt100, ohm. */
export function pt100Ohm(tC: number): number {
  const { a, b, c, ohmAt0C } = pt
  const cold = tC < 0 ? c * (tC - 100) * tC * tC * tC : 0
  return ohmAt0C * (1 + a * tC + b * tC * tC + cold)
}

/** Temperature of a Pt100, °C; null outside -200 to 850 °C. */
export function pt100C(ohm: number): number | null {
  const slackOhm = 0.0001
  if (!(ohm >= pt100Ohm(pt.fromC) - slackOhm && ohm <= pt100Ohm(pt.toC) + slackOhm)) return null
  const { a, b, ohmAt0C } = pt
  let t = (-a + Math.sqrt(a * a - 4 * b * (1 - ohm / ohmAt0C))) / (2 * b)
  // Below 0 °C the closed form is a first guess (off by at most 2.5 K at -200); Newton on the full function settles in a few rounds.
  for (let round = 0; t < 0 && round < 20; round++) {
    const step = (ohm - pt100Ohm(t)) / pt100Slope(t)
    t += step
    if (Math.abs(step) < 1e-10) break
  }
  return t
}

function pt100Slope(tC: number): number {
  const { a, b, c, ohmAt0C } = pt
  const cold = tC < 0 ? c * (4 * tC * tC * tC - 300 * tC * tC) : 0
  return ohmAt0C * (a + 2 * b * tC + cold)
}

const kelvinAt0C = 273.15
const kelvinAt25C = 298.15

/** Two-parameter formula of an NTC (instrument facts 2.6: within a kelvin or so of a real part between 0 and 50 °C). */
export function ntcOhm(tC: number, ohmAt25C: number, betaK: number): number {
  return ohmAt25C * Math.exp(betaK * (1 / (tC + kelvinAt0C) - 1 / kelvinAt25C))
}

/** Null for what no resistor can have. */
export function ntcC(ohm: number, ohmAt25C: number, betaK: number): number | null {
  if (!(ohm > 0)) return null
  const inverse = 1 / kelvinAt25C + Math.log(ohm / ohmAt25C) / betaK
  return inverse > 0 ? 1 / inverse - kelvinAt0C : null
}
