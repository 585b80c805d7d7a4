import { first } from './0001-first.ts'

/** Forward only, each in one transaction; a released one is never edited. Its number is its place in the list. */
export const migrations: readonly string[] = [first]
