import { describe, expect, it } from 'vitest'
import { withKiln } from '../../../../server/http/setup/kiln-patch.ts'
import { settingsSchema } from '../../../../server/settings/schema.ts'

const settings = settingsSchema.parse({ kilns: [{ roles: { 'yard/n1/a': 'wall', 'yard/n1/b': 'outlet' } }, { kiln: 'kiln-2' }] })
const first = (patch: Parameters<typeof withKiln>[2]) => settingsSchema.parse(withKiln(settings, 'kiln-1', patch)).kilns[0]

describe('a patch of one kiln', () => {
  it('swaps two probes and leaves the rest', () => {
    expect(first({ roles: { 'yard/n1/a': 'outlet', 'yard/n1/b': 'wall' } })).toEqual({
      ...settings.kilns[0],
      roles: { 'yard/n1/a': 'outlet', 'yard/n1/b': 'wall' },
    })
  })
  it('takes a role or a calibration away', () => {
    expect(first({ roles: { 'yard/n1/a': null } })?.roles).toEqual({ 'yard/n1/b': 'outlet' })
    const calibrated = withKiln(settings, 'kiln-1', { calibration: { 'yard/n1/a': { gain: 1, offset: -0.5 } } })
    expect(withKiln(calibrated, 'kiln-1', { calibration: { 'yard/n1/a': null } })).toEqual(settings)
  })
  it('does not touch another kiln, and adds one that is not there', () => {
    const added = settingsSchema.parse(withKiln(settings, 'kiln-3', { name: 'Third' }))
    expect(added.kilns.map(({ kiln, name }) => [kiln, name])).toEqual([
      ['kiln-1', ''],
      ['kiln-2', ''],
      ['kiln-3', 'Third'],
    ])
    expect(added.kilns.slice(0, 2)).toEqual(settings.kilns)
  })
  it('is checked by the settings, every problem with its field', () => {
    const result = settingsSchema.safeParse(withKiln(settings, 'kiln-1', { volumeL: 1, cover: 'straw', altitudeM: 9000 }))
    expect(result.error?.issues.map(({ path }) => path.join('.'))).toEqual(['kilns.0.volumeL', 'kilns.0.cover', 'kilns.0.altitudeM'])
  })
})
