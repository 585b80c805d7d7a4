/** Where this page was served from: `/` for the kiln itself, `/demo/` for the demo firing. All addresses are taken from here. */
export interface Place {
  base: URL
  demo: boolean
}

export function placeOf(address: string): Place {
  const base = new URL('.', address)
  return { base, demo: base.pathname.endsWith('/demo/') }
}

export function liveAddress(place: Place): string {
  const address = new URL('live', place.base)
  address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:'
  return address.href
}

export function apiAddress(place: Place, path: string): string {
  return new URL(`api/${path}`, place.base).href
}
