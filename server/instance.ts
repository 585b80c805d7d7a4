import type { SiteView } from './contract/live.ts'
import type { ClockWord } from './contract/setup.ts'
import type { Instance } from './http/instance.ts'
import type { houseFolds } from './runtime/house-folds.ts'
import type { Site } from './runtime/site.ts'
import type { Store } from './storage/store.ts'

export type AppFolds = typeof houseFolds
export type AppSite = Site<ReturnType<AppFolds['intake']['start']>, ReturnType<AppFolds['kiln']['start']>>

/** A running site as the web sees it. */
export function instanceOf<I, K>(
  site: Site<I, K>,
  store: Store,
  kind: { isDemo: boolean; demo: () => SiteView['demo']; clockWord: () => ClockWord | null },
): Instance {
  return {
    demo: kind.isDemo,
    store,
    now: () => site.now(),
    speed: () => site.clock().speed(),
    clockSure: () => site.clock().sure() && kind.clockWord()?.right !== false,
    clockConfirmed: () => site.clock().sure() && (kind.isDemo || kind.clockWord()?.right === true),
    kilns: () => site.kilns(),
    kilnView: (kiln) => site.kilnView(kiln),
    siteView: () => ({ ...site.siteView(), demo: kind.demo() }),
    probes: () => site.probes(),
    session: (kiln) => site.session(kiln),
    idleCurve: (session) => site.idleCurve(session),
    forget: (kiln, what, by) => site.forget(kiln, what, by),
    act: (kiln, act) => site.act(kiln, act),
    echo: (page, visible) => site.echo(page, visible),
    leave: (page) => site.leave(page),
    listen: (listener) => site.listen(listener),
  }
}
