import type { Drawer } from './live/outbox.svelte.ts'

/** `localStorage`, or a drawer that forgets where the browser forbids it (private windows, blocked storage). */
export function browserDrawer(): Drawer {
  try {
    localStorage.setItem('try', '1')
    localStorage.removeItem('try')
    return localStorage
  } catch {
    const kept = new Map<string, string>()
    return { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) }
  }
}
