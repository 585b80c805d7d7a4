export type Part = { is: 'list' | 'take-in' } | { is: 'firing' | 'report' | 'again'; id: string } | { is: 'compare'; ids: string[] }

export const mostCompared = 6

/** What of the shelf an address means; `~` stands in no id of a firing. */
export function partOf(what: string | null): Part {
  if (what === null) return { is: 'list' }
  const [first = '', ...rest] = what.split('~')
  if (first === 'take-in') return { is: 'take-in' }
  if (first === 'compare') return { is: 'compare', ids: [...new Set(rest)].slice(0, mostCompared) }
  const [id = ''] = rest
  if ((first === 'report' || first === 'again') && id !== '') return { is: first, id }
  return { is: 'firing', id: what }
}
