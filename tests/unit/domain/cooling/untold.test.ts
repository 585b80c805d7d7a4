import { describe, expect, it } from 'vitest'
import { sealedHints } from '../../../../server/domain/calls/hints.ts'
import { noFacts } from '../../../../server/domain/firing/facts.ts'
import { runSealed, tightKiln, type SealedKiln } from './sealed-kiln.ts'

/** Sealed, or closed anew, once the wall was nearly as cool as the air: what a night tells by its fall is past. */
const longCold: SealedKiln = {
  ...tightKiln,
  hottestK: 25,
  wallLead: 0,
  airMeanC: 26,
  airSwingK: 0,
  noiseK: 0.2,
  ambientProbe: false,
  fireboxC: 27,
}

const hintsAfter = (kiln: SealedKiln, hours: number, facts = {}) => {
  const { look, cooling, openH } = runSealed(kiln, hours, 1)
  const { at } = look!
  const sealedAt = cooling.sealedAt
  const hints = sealedHints(
    { ...look!, facts: { ...noFacts(), sealedAt, ...facts }, at },
    sealedAt,
    cooling,
    openH === null ? 'not-yet' : 'due',
  )
  return { openH, codes: hints.flatMap(({ hint, because }) => [hint, ...because.map(({ code }) => code)]) }
}

describe('a kiln that was cold when it was closed', () => {
  it('is told as one for which no call may come, after the least wait and not before, instead of silence', () => {
    expect(hintsAfter(longCold, 9)).toEqual({ openH: null, codes: [] })
    expect(hintsAfter(longCold, 30)).toEqual({ openH: null, codes: ['open-untold', 'wall-tells-no-more', 'own-signs-only'] })
  })
  it('in which a fire came back and is out is to be closed anew, at once: until then none is called', () => {
    const { look, cooling } = runSealed(tightKiln, 3, 1)
    const facts = { ...noFacts(), sealedAt: cooling.sealedAt }
    const after = (change: object) => sealedHints({ ...look!, facts }, cooling.sealedAt, { ...cooling, ...change }, 'not-yet')
    const hasRelit = [{ code: 'wall-rose', value: 42, limit: 5 }]
    expect(after({ hasRelit }).flatMap(({ because }) => because.map(({ code }) => code))).toEqual(['fire-came-back'])
    expect(after({ hasRelit, rose: hasRelit })).toEqual([])
    expect(after({})).toEqual([])
  })
  it('is told nothing more while its small gap stands, or once it is open', () => {
    expect(hintsAfter(longCold, 30, { crackedAt: 1 }).codes).toEqual([])
    expect(hintsAfter(longCold, 30, { openedAt: 1 }).codes).toEqual([])
  })
  it('is not what a kiln is that falls as sealed ones do, nor one that a fire keeps warm', () => {
    for (let hours = 11; hours <= 35; hours += 4) expect(hintsAfter(tightKiln, hours).codes).toEqual([])
    expect(hintsAfter({ ...longCold, leakK: 200 }, 30).codes).not.toContain('open-untold')
  })
})
