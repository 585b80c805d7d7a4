import { storeContract } from './store.contract.ts'
import { dataFolder, sqliteIn } from './data-folder.ts'

storeContract('sqlite', async () => {
  const { folder, remove } = dataFolder()
  return { store: sqliteIn(folder), remove }
})
