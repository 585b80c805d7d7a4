import type { Drawer } from '../live/outbox.svelte.ts'

export const languages = ['en', 'es', 'th'] as const
export type Language = (typeof languages)[number]

export interface Choices {
  language: Language
  temperature: 'C' | 'F'
  volume: 'L' | 'gal'
  mass: 'kg' | 'lb'
  look: 'day' | 'night'
  voice: boolean
}

const kept = 'choices'

/** What a person chose on this tablet. It stays here: another tablet may read °F while this one reads °C. */
export class Choice {
  now = $state.raw<Choices>({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg', look: 'day', voice: true })
  readonly #drawer: Drawer

  constructor(drawer: Drawer, languageOfDevice: string) {
    this.#drawer = drawer
    const before = read(drawer)
    // a language that this page has not would make every number and hour throw
    const language =
      languages.find((name) => name === before.language) ??
      languages.find((name) => languageOfDevice.toLowerCase().startsWith(name)) ??
      'en'
    this.now = { ...this.now, ...before, language }
  }

  set(change: Partial<Choices>): void {
    this.now = { ...this.now, ...change }
    this.#drawer.setItem(kept, JSON.stringify(this.now))
  }
}

function read(drawer: Drawer): Partial<Choices> {
  try {
    const value: unknown = JSON.parse(drawer.getItem(kept) ?? '{}')
    return typeof value === 'object' && value !== null ? (value as Partial<Choices>) : {}
  } catch {
    return {}
  }
}
