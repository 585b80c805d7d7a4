import { en, type Words } from './en.ts'
export const th: Words = { ...en, name: 'ไทย', madeBy: 'machine' }
