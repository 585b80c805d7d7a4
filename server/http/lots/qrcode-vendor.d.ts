declare module 'qrcode-terminal/vendor/QRCode/index.js' {
  export default class QRCode {
    /** @param typeNumber -1 takes the smallest that fits; @param errorCorrectLevel 0 is M, 1 is L */
    constructor(typeNumber: number, errorCorrectLevel: 0 | 1 | 2 | 3)
    addData(text: string): void
    make(): void
    getModuleCount(): number
    isDark(row: number, column: number): boolean
  }
}
