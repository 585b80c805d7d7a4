import { pairing as english } from './words/en.ts'
import type { PairingWords } from './words/en.ts'
import { pairing as spanish } from './words/es.ts'
import { pairing as thai } from './words/th.ts'

const invitation = /^[A-Za-z0-9_-]{10,100}$/

const languages: readonly PairingWords[] = [english, spanish, thai]

/** Words in the first language of the browser that we have, else in English. @param accepted its Accept-Language header */
function wordsFor(accepted: string | undefined): PairingWords {
  const wanted = (accepted ?? '').split(',').map((part) => part.trim().slice(0, 2).toLowerCase())
  for (const language of wanted) {
    const found = languages.find((words) => words.language === language)
    if (found) return found
  }
  return english
}

function frame({ language, madeBy }: PairingWords, title: string, body: string): string {
  return `<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${title}</title></head>
<body><main><h1>${title}</h1>${body}${madeBy === '' ? '' : `<p><small>${madeBy}</small></p>`}</main></body></html>
`
}

/** Plain form without a script; null where the code can be none. */
export function pairingPage(code: string | null, accepted: string | undefined): string | null {
  if (code === null || !invitation.test(code)) return null
  const words = wordsFor(accepted)
  const form = `<form method="post" action="pair"><input type="hidden" name="code" value="${code}"><button type="submit">${words.button}</button></form>`
  return frame(words, words.title, `<p>${words.explain}</p>${form}`)
}

/** What a browser that was never paired is told in place of the dashboard. */
export function strangerPage(accepted: string | undefined): string {
  const words = wordsFor(accepted)
  return frame(words, words.strangerTitle, `<p>${words.strangerExplain}</p>`)
}
