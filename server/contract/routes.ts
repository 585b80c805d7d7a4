/** Who may do what: each may do what those before it may. `anyone` is a browser that was never paired. */
export const people = ['anyone', 'viewer', 'operator', 'owner'] as const
export type Person = (typeof people)[number]

export interface Route {
  method: 'GET' | 'POST' | 'PUT' | 'DELETE'
  /** `:name` stands for one segment. Under `/demo` the same routes belong to the demo firing, where every viewer may act. */
  path: string
  least: Person
  /** The body is a file, as `application/octet-stream`; every other body is JSON. */
  takes?: 'file'
}

/** Every route of the service. A route without a person does not compile, and one without a handler neither. */
export const routes = {
  health: { method: 'GET', path: '/api/health', least: 'anyone' },
  whoAmI: { method: 'GET', path: '/api/people/me', least: 'anyone' },
  pair: { method: 'POST', path: '/api/people/pair', least: 'anyone' },
  devices: { method: 'GET', path: '/api/people', least: 'owner' },
  invite: { method: 'POST', path: '/api/people/invite', least: 'owner' },
  removeDevice: { method: 'DELETE', path: '/api/people/:id', least: 'owner' },
  register: { method: 'GET', path: '/api/register', least: 'owner' },
  nodeKeys: { method: 'GET', path: '/api/nodes/keys', least: 'owner' },
  nodeRefusals: { method: 'GET', path: '/api/nodes/refused', least: 'operator' },
  pairNode: { method: 'POST', path: '/api/nodes/:node/key', least: 'owner' },
  forgetNode: { method: 'DELETE', path: '/api/nodes/:node/key', least: 'owner' },
  firings: { method: 'GET', path: '/api/firings', least: 'viewer' },
  firing: { method: 'GET', path: '/api/firings/:id', least: 'viewer' },
  renameFiring: { method: 'PUT', path: '/api/firings/:id/title', least: 'operator' },
  firingCurve: { method: 'GET', path: '/api/firings/:id/curve', least: 'viewer' },
  recording: { method: 'GET', path: '/api/firings/:id/recording', least: 'viewer' },
  firingTable: { method: 'GET', path: '/api/firings/:id/table', least: 'viewer' },
  firingDocument: { method: 'GET', path: '/api/firings/:id/document', least: 'viewer' },
  season: { method: 'GET', path: '/api/season', least: 'viewer' },
  firingSchema: { method: 'GET', path: '/api/schemas/firing', least: 'viewer' },
  whatIf: { method: 'POST', path: '/api/firings/:id/what-if', least: 'operator' },
  playAgain: { method: 'POST', path: '/api/firings/:id/again', least: 'operator' },
  lookAtImport: { method: 'POST', path: '/api/imports/look', least: 'operator', takes: 'file' },
  keepImport: { method: 'POST', path: '/api/imports', least: 'operator', takes: 'file' },
  currentCurve: { method: 'GET', path: '/api/curve/current', least: 'viewer' },
  act: { method: 'POST', path: '/api/acts', least: 'operator' },
  quarantine: { method: 'GET', path: '/api/quarantine', least: 'operator' },
  documents: { method: 'GET', path: '/api/documents/:kind', least: 'viewer' },
  documentHistory: { method: 'GET', path: '/api/documents/:kind/:id', least: 'viewer' },
  putDocument: { method: 'PUT', path: '/api/documents/:kind/:id', least: 'operator' },
  glassLooks: { method: 'GET', path: '/api/glasses/:kiln', least: 'viewer' },
  glassPicture: { method: 'GET', path: '/api/glasses/:kiln/:id', least: 'viewer' },
  putGlassPicture: { method: 'PUT', path: '/api/glasses/:kiln/:id', least: 'operator', takes: 'file' },
  lots: { method: 'GET', path: '/api/lots', least: 'viewer' },
  addLotEntry: { method: 'POST', path: '/api/lots/entries', least: 'operator' },
  lotCode: { method: 'GET', path: '/api/lots/:id/code', least: 'viewer' },
  setup: { method: 'GET', path: '/api/setup', least: 'viewer' },
  sayClock: { method: 'POST', path: '/api/setup/clock', least: 'owner' },
  sayHeard: { method: 'POST', path: '/api/setup/heard', least: 'operator' },
  beep: { method: 'POST', path: '/api/setup/beep', least: 'operator' },
  startRehearsal: { method: 'POST', path: '/api/setup/rehearsal', least: 'operator' },
  endRehearsal: { method: 'DELETE', path: '/api/setup/rehearsal', least: 'operator' },
  pairCode: { method: 'GET', path: '/api/setup/pair-code', least: 'owner' },
  putKiln: { method: 'PUT', path: '/api/setup/kilns/:kiln', least: 'owner' },
  forgetKiln: { method: 'POST', path: '/api/setup/kilns/:kiln/forget', least: 'owner' },
  settingsChanges: { method: 'GET', path: '/api/settings/changes', least: 'viewer' },
  settings: { method: 'GET', path: '/api/settings', least: 'viewer' },
  putSettings: { method: 'PUT', path: '/api/settings', least: 'owner' },
  startDemo: { method: 'POST', path: '/api/demo', least: 'viewer' },
  stopDemo: { method: 'DELETE', path: '/api/demo', least: 'viewer' },
} as const satisfies Record<string, Route>

export type RouteName = keyof typeof routes

/** What a route answers when it can not do what was asked; the page has the words. */
export const problems = {
  'bad-request': 400,
  'not-json': 400,
  'not-allowed': 403,
  'foreign-page': 403,
  'not-found': 404,
  'too-large': 413,
  'wrong-type': 415,
  'unknown-host': 421,
  'not-understood': 422,
  'unknown-kiln': 422,
  'unknown-act': 422,
  'bad-settings': 422,
  'bad-import': 422,
  'code-used': 403,
  'no-demo': 404,
  'too-many-tries': 429,
  'kiln-burns': 409,
  'storage-failing': 503,
  internal: 500,
} as const
export type ProblemCode = keyof typeof problems

export interface ProblemAnswer {
  problem: ProblemCode
  /** Which member is meant, and why, where that can be said. */
  details?: { path: string; what: string }[]
  /** Of `internal` only: finds the failure in the log. */
  id?: string
}
