export const views = ['now', 'shelf', 'lots', 'use', 'plan', 'setup'] as const
/** Pages that stand in no strip: they are come to by a link. */
const linked = ['manual'] as const
export type View = (typeof views)[number] | (typeof linked)[number]

/** `#/shelf/some-firing`: the view and what of it. */
export class Router {
  view = $state<View>('now')
  what = $state<string | null>(null)

  readonly follow = (): void => {
    const [, view, what] = location.hash.split('/')
    this.view = [...views, ...linked].find((name) => name === view) ?? 'now'
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
