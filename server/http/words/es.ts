import type { PairingWords } from './en.ts'

/** Spanish, made by a machine and not yet read by a speaker. */
export const pairing: PairingWords = {
  language: 'es',
  madeBy: 'Traducido por máquina; ningún hablante lo ha leído todavía.',
  title: 'Enlazar esta tableta',
  explain: 'Un toque, y este navegador puede mirar y anotar aquí. El enlace vale una sola vez y durante un cuarto de hora.',
  button: 'Enlazar esta tableta',
  strangerTitle: 'Este navegador aún no está enlazado',
  strangerExplain:
    'Escanee el código cuadrado que el servicio muestra al arrancar, o pida un enlace al dueño. En la propia máquina la página se abre en localhost sin enlazar.',
}
