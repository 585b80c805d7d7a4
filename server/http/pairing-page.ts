import { pairing } from './words/en.ts'

const invitation = /^[A-Za-z0-9_-]{10,100}$/

/** Plain form without a script; null where the code can be none. */
export function pairingPage(code: string | null): string | null {
  if (code === null || !invitation.test(code)) return null
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${pairing.title}</title></head>
<body><h1>${pairing.title}</h1><p>${pairing.explain}</p>
<form method="post" action="pair"><input type="hidden" name="code" value="${code}"><button type="submit">${pairing.button}</button></form></body></html>
`
}
