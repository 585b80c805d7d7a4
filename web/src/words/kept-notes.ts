/** Notes that a key logs, in the words of whoever pressed it: another tablet knows them by these and tells them in its own language. */
export const keptNotes: Record<'listGone' | 'looked', Record<'en' | 'es' | 'th', string>> = {
  listGone: {
    en: 'Went through the list before lighting.',
    es: 'Repasada la lista antes de encender.',
    th: 'ตรวจรายการก่อนจุดไฟแล้ว',
  },
  looked: {
    en: 'Looked at the seals.',
    es: 'Sellos mirados.',
    th: 'ตรวจรอยปิดแล้ว',
  },
}
