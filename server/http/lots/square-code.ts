import QRCode from 'qrcode-terminal/vendor/QRCode/index.js'

/** Light modules around the code (ISO/IEC 18004: four). */
const quiet = 4

/** The square code of a text as one SVG path, for a label or a card. @param text up to some 200 characters; what is not ASCII becomes `?` */
export function squareCode(text: string): string {
  const code = new QRCode(-1, 0)
  code.addData(text.replace(/[^\x20-\x7e]/gu, '?'))
  code.make()
  const count = code.getModuleCount()
  let path = ''
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column < count; column += 1) {
      if (code.isDark(row, column)) path += `M${String(column + quiet)} ${String(row + quiet)}h1v1h-1z`
    }
  }
  const size = count + 2 * quiet
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${String(size)} ${String(size)}" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h${String(size)}v${String(size)}H0z"/><path d="${path}"/></svg>`
}
