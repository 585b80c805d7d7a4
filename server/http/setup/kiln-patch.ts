import { z } from 'zod'

/** What the steps of the first run put at one kiln; what is missing stays. The bounds are those of the settings. */
export const kilnPatchSchema = z.strictObject({
  name: z.string().optional(),
  sign: z.string().optional(),
  volumeL: z.number().optional(),
  cover: z.string().optional(),
  way: z.string().optional(),
  condenser: z.string().optional(),
  altitudeM: z.number().optional(),
  /** Null takes a channel's role away. */
  roles: z.record(z.string(), z.string().nullable()).optional(),
  /** Null takes a channel's calibration away. */
  calibration: z.record(z.string(), z.object({ gain: z.number(), offset: z.number() }).nullable()).optional(),
})
export type KilnPatch = z.infer<typeof kilnPatchSchema>

type Plain = Record<string, unknown>

/** The settings with the patch put at its kiln; a kiln that is not there yet is added. Not checked: the settings' own schema does that. */
export function withKiln(settings: Plain, kiln: string, patch: KilnPatch): Plain {
  const kilns = (settings['kilns'] ?? []) as Plain[]
  const known = kilns.some((one) => one['kiln'] === kiln)
  const all = known ? kilns : [...kilns, { kiln }]
  return { ...settings, kilns: all.map((one) => (one['kiln'] === kiln ? patched(one, patch) : one)) }
}

function patched(kiln: Plain, { roles, calibration, ...plain }: KilnPatch): Plain {
  return {
    ...kiln,
    ...plain,
    ...(roles ? { roles: merged(kiln['roles'], roles) } : {}),
    ...(calibration ? { calibration: merged(kiln['calibration'], calibration) } : {}),
  }
}

function merged(before: unknown, change: Plain): Plain {
  return Object.fromEntries(Object.entries({ ...(before as Plain | undefined), ...change }).filter(([, value]) => value !== null))
}
