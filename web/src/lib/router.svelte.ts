export const views = ['now', 'shelf', 'lots', 'use', 'plan', 'setup'] as const
export type View = (typeof views)[number]

/** `#/shelf/some-firing`: the view and what of it. */
export class Router {
  view = $state<View>('now')
  what = $state<string | null>(null)

  readonly follow = (): void => {
    const [, view, what] = location.hash.split('/')
    this.view = views.find((name) => name === view) ?? 'now'
    this.what = what ? decodeURIComponent(what) : null
  }

  start(): void {
    this.follow()
    window.addEventListener('hashchange', this.follow)
  }

  stop(): void {
    window.removeEventListener('hashchange', this.follow)
  }
}

export function hrefOf(view: View, what?: string): string {
  return what === undefined ? `#/${view}` : `#/${view}/${encodeURIComponent(what)}`
}
