import { readFileSync, readdirSync } from 'node:fs'

const folder = new URL('../../../firmware-notes/', import.meta.url)
export const page = (name: string) => readFileSync(new URL(name, folder), 'utf8')
const pages = readdirSync(folder).filter((name) => name.endsWith('.md'))

export interface Example {
  name: string
  language: string
  text: string
  topic: string | null
  /** Where the service says it. */
  said: string | null
  at: number | null
  refused: string | null
}

/** Every fenced block with what the comment above it says of it. */
function examplesOf(name: string): Example[] {
  const blocks = page(name).matchAll(/(?:<!-- (.*?) -->\n+)?```(\w*)\n([\s\S]*?)```/g)
  return [...blocks].map(([, note = '', language = '', text = '']) => ({
    name,
    language,
    text: text.trim(),
    topic: /topic: (\S+)/.exec(note)?.[1] ?? null,
    said: /said: (\S+)/.exec(note)?.[1] ?? null,
    at: /at: (\S+)/.exec(note)?.[1] ? Date.parse(/at: (\S+)/.exec(note)?.[1] ?? '') : null,
    refused: /refused: (\S+)/.exec(note)?.[1] ?? null,
  }))
}

const examples = pages.flatMap(examplesOf).filter(({ language }) => language !== 'sh')

/** All that a node says, in the order of the pages; what is typed into a shell is left out. */
export const messages = examples.filter(({ said }) => said === null)

/** All that the service says. */
export const answers = examples.filter(({ said }) => said !== null)
