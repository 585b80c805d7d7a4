import type { Ms } from '../../../../server/contract/fold.ts'
import type { Role } from '../../../../server/contract/vocabulary.ts'
import { dateLocale } from './date-locale.ts'

const litresPerGallon = 3.785411784 // NIST Handbook 44, appendix C: US gallon
const kgPerPound = 0.45359237 // the same, avoirdupois pound

/** What a person chose of it; the terminal chooses too. */
interface Chosen {
  language: string
  temperature: 'C' | 'F'
  volume: 'L' | 'gal'
  mass: 'kg' | 'lb'
}

/** Numbers, units, times and dates as this person reads them. Everything is kept in °C, L and kg; only here it is turned. */
export class Measures {
  readonly #choices: Chosen
  readonly #hour: Intl.DateTimeFormat
  readonly #day: Intl.DateTimeFormat
  readonly #dayAndYear: Intl.DateTimeFormat

  constructor(choices: Chosen) {
    this.#choices = choices
    const language = dateLocale(choices.language)
    this.#hour = new Intl.DateTimeFormat(language, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })
    this.#day = new Intl.DateTimeFormat(language, { weekday: 'short', day: 'numeric', month: 'short', calendar: 'gregory' })
    this.#dayAndYear = new Intl.DateTimeFormat(language, { day: 'numeric', month: 'short', year: 'numeric', calendar: 'gregory' })
  }

  degreeSign(): string {
    return this.#choices.temperature === 'F' ? '°F' : '°C'
  }

  /** The bare number of a temperature, rounded to whole degrees. */
  degrees(celsius: number): number {
    return Math.round(this.#choices.temperature === 'F' ? celsius * 1.8 + 32 : celsius)
  }

  temperature(celsius: number): string {
    return `${this.degrees(celsius)} ${this.degreeSign()}`
  }

  /** A difference, e.g. of a slope: no offset. */
  kelvins(kelvin: number): string {
    return `${Math.round(Math.abs(this.#choices.temperature === 'F' ? kelvin * 1.8 : kelvin))} ${this.degreeSign()}`
  }

  litres(litres: number): string {
    return this.#choices.volume === 'gal' ? `${this.number(litres / litresPerGallon, 1)} gal` : `${this.number(litres, 1)} L`
  }

  /** The number alone, for ranges whose unit stands at their end. */
  litresBare(litres: number): string {
    return this.number(this.#choices.volume === 'gal' ? litres / litresPerGallon : litres, 1)
  }

  kilograms(kg: number): string {
    return this.#choices.mass === 'lb' ? `${this.number(kg / kgPerPound, 1)} lb` : `${this.number(kg, 1)} kg`
  }

  /** The bare number in the person's own unit, to the millilitre or gram as far as it is known. */
  own(what: 'volume' | 'mass', litresOrKg: number): number {
    const unit = what === 'volume' ? (this.#choices.volume === 'gal' ? litresPerGallon : 1) : this.#choices.mass === 'lb' ? kgPerPound : 1
    return Math.round((litresOrKg / unit) * 1000) / 1000
  }

  /** What was typed in the person's own unit, back to litres. */
  typedLitres(typed: number): number {
    return this.#choices.volume === 'gal' ? typed * litresPerGallon : typed
  }

  typedKilograms(typed: number): number {
    return this.#choices.mass === 'lb' ? typed * kgPerPound : typed
  }

  typedCelsius(typed: number): number {
    return this.#choices.temperature === 'F' ? (typed - 32) / 1.8 : typed
  }

  volumeUnit(): string {
    return this.#choices.volume
  }

  massUnit(): string {
    return this.#choices.mass
  }

  number(value: number, digits = 0): string {
    return value.toLocaleString(this.#choices.language, { minimumFractionDigits: digits, maximumFractionDigits: digits })
  }

  percent(share: number): string {
    return `${this.number(share * 100)} %`
  }

  /** Number and unit of one channel, by what it measures. */
  reading(role: Role, value: number): { number: string; unit: string } {
    if (role === 'co') return { number: this.number(value), unit: 'ppm' }
    if (role === 'bottle') {
      const [number = '', unit = ''] = this.kilograms(value).split(' ')
      return { number, unit }
    }
    return { number: String(this.degrees(value)).replace('-', '−'), unit: this.degreeSign() }
  }

  clock(at: Ms): string {
    return this.#hour.format(at)
  }

  date(at: Ms): string {
    return this.#day.format(at)
  }

  fullDate(at: Ms): string {
    return this.#dayAndYear.format(at)
  }

  /** To the next five minutes outwards, so that a forecast never looks finer than it is. */
  range(earliest: Ms, latest: Ms): { from: string; to: string } {
    const step = 300_000
    return { from: this.clock(Math.floor(earliest / step) * step), to: this.clock(Math.ceil(latest / step) * step) }
  }

  sameDay(a: Ms, b: Ms): boolean {
    return this.#dayAndYear.format(a) === this.#dayAndYear.format(b)
  }
}
