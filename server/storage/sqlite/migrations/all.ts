import { first } from './0001-first.ts'
import { shelf } from './0002-shelf.ts'

/** Forward only, each in one transaction; a released one is never edited. Its number is its place in the list. */
export const migrations: readonly string[] = [first, shelf]
