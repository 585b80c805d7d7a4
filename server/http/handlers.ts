import type { RouteName } from '../contract/routes.ts'
import type { Handler } from './context.ts'
import { keepImport, lookAtImport } from './firings/in.ts'
import { firingDocument, firingSchema, firingTable } from './firings/out.ts'
import { season } from './firings/season.ts'
import { playAgain } from './firings/again.ts'
import { whatIf } from './firings/what-if.ts'
import { lotRoutes } from './lots/routes.ts'
import type { People } from './people.ts'
import { takeAct } from './routes/acts.ts'
import { boxRoutes } from './routes/box.ts'
import type { Box } from './routes/box.ts'
import { documentHistory, listDocuments, putDocument } from './routes/documents.ts'
import { currentCurve, firingCurve, listFirings, oneFiring, recording, renameFiring } from './routes/firings.ts'
import { glassLooks, glassPicture, putGlassPicture } from './routes/glasses.ts'
import { nodeRoutes } from './routes/nodes.ts'
import type { NodeDoor } from './routes/nodes.ts'
import { peopleRoutes } from './routes/people.ts'
import type { SetupDoor } from './setup/door.ts'
import { setupRoutes } from './setup/routes.ts'

/** The handler of every route of the contract; a missing one does not compile. */
export function handlersFor(box: Box, people: People, setup: SetupDoor, nodes: NodeDoor | undefined): Record<RouteName, Handler> {
  return {
    ...boxRoutes(box),
    ...peopleRoutes(people),
    ...nodeRoutes(nodes),
    ...lotRoutes(),
    ...setupRoutes(box, setup),
    firings: listFirings,
    firing: oneFiring,
    renameFiring,
    firingCurve,
    recording,
    firingTable,
    firingDocument,
    season,
    firingSchema,
    playAgain,
    whatIf,
    lookAtImport,
    keepImport,
    currentCurve,
    act: takeAct,
    documents: listDocuments,
    documentHistory,
    putDocument,
    glassLooks,
    glassPicture,
    putGlassPicture,
  }
}
