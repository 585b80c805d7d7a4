import { storeContract } from '../../contract/store.contract.ts'
import { createMemoryStore } from '../../../server/storage/memory.ts'

storeContract('memory', async () => ({ store: createMemoryStore(), remove: async () => {} }))
