import type { PairingWords } from './en.ts'

/** Thai, made by a machine and not yet read by a speaker. */
export const pairing: PairingWords = {
  language: 'th',
  madeBy: 'แปลด้วยเครื่อง ยังไม่มีเจ้าของภาษาตรวจ',
  title: 'จับคู่แท็บเล็ตนี้',
  explain: 'แตะครั้งเดียว แล้วเบราว์เซอร์นี้จะดูและบันทึกที่นี่ได้ ลิงก์ใช้ได้ครั้งเดียวภายในสิบห้านาที',
  button: 'จับคู่แท็บเล็ตนี้',
  strangerTitle: 'เบราว์เซอร์นี้ยังไม่ได้จับคู่',
  strangerExplain: 'สแกนรหัสสี่เหลี่ยมที่โปรแกรมแสดงเมื่อเริ่มทำงาน หรือขอลิงก์จากเจ้าของ บนเครื่องนี้เองเปิดหน้าได้ที่ localhost โดยไม่ต้องจับคู่',
}
