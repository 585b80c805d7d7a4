import { defaultKilnConfig } from '../contract/kiln-defaults.ts'
import type { KilnConfig } from '../contract/fold.ts'
import type { KilnSettings } from './schema.ts'

/** The settings of a kiln as its fold starts with them; the charge comes with the loading. */
export function kilnConfigOf(settings: KilnSettings): KilnConfig {
  return { ...defaultKilnConfig(settings.kiln), ...settings }
}
