import { storeContract } from '../../contract/store.contract.ts'
import { dataFolder, sqliteIn } from '../../contract/data-folder.ts'

storeContract('sqlite', async () => {
  const { folder, remove } = dataFolder()
  return { store: sqliteIn(folder), remove }
})
