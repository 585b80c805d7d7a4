import type uPlot from 'uplot'
import type { Ms } from '../../../../server/contract/fold.ts'
import type { Curve, ForecastView } from '../../../../server/contract/live.ts'
import { tone } from './lines.ts'
import { besideEnd, spread } from './scales.ts'

/** What is drawn around the lines. All lengths in CSS pixels, times ms, temperatures °C. */
export interface Around {
  now: Ms | null
  forecast: ForecastView | null
  ghost: { t: readonly Ms[]; values: readonly (number | null)[]; label: string } | null
  /** `height` as a share of the picture's, from the top. */
  blind: { from: Ms; to: Ms; height: number; label: string }[]
  band: { from: number; to: number; fromLabel: string; toLabel: string } | null
  marks: Curve['marks']
  labels: { key: string; text: string; fire: boolean; value: number; t: Ms }[]
  /** Top and bottom of the firebox's own scale. */
  fireTicks: { value: number; text: string }[]
  font: string
}

/** Under the lines: the collecting band, the earlier firing, the fan. */
export function drawUnder(u: uPlot, around: Around): void {
  const { ctx, bbox } = u
  const x = (t: Ms): number => u.valToPos(t, 'x', true)
  const y = (value: number): number => u.valToPos(value, 'c', true)
  ctx.save()
  ctx.beginPath()
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height)
  ctx.clip()
  // the library leaves the dash of its last line behind
  ctx.setLineDash([])
  if (around.band) {
    ctx.fillStyle = tone('--band')
    ctx.fillRect(bbox.left, y(around.band.to), bbox.width, y(around.band.from) - y(around.band.to))
  }
  const fan = around.forecast?.smoke ?? []
  if (fan.length > 1) {
    ctx.fillStyle = tone('--fan')
    ctx.beginPath()
    for (const point of fan) ctx.lineTo(x(point.t), y(point.high))
    for (const point of [...fan].reverse()) ctx.lineTo(x(point.t), y(point.low))
    ctx.closePath()
    ctx.fill()
    ctx.strokeStyle = tone('--line')
    ctx.lineWidth = 1.5 * devicePixelRatio
    ctx.setLineDash([6 * devicePixelRatio, 6 * devicePixelRatio])
    ctx.beginPath()
    for (const point of fan) ctx.lineTo(x(point.t), y(point.middle))
    ctx.stroke()
    ctx.setLineDash([])
  }
  for (const span of around.blind) drawBlind(u, { ...span, from: x(span.from), to: x(span.to) }, around.font)
  if (around.ghost) {
    ctx.strokeStyle = tone('--hair')
    ctx.lineWidth = 7 * devicePixelRatio
    ctx.lineJoin = 'round'
    ctx.beginPath()
    let pen = false
    around.ghost.t.forEach((t, index) => {
      const value = around.ghost?.values[index] ?? null
      if (value === null) pen = false
      else if (pen) ctx.lineTo(x(t), y(value))
      else ctx.moveTo(x(t), y(value))
      if (value !== null) pen = true
    })
    ctx.stroke()
    const label = namedAt(around.ghost, u.scales.x?.max ?? Infinity)
    if (label) {
      ctx.font = `400 ${14 * devicePixelRatio}px ${around.font}`
      ctx.fillStyle = tone('--mid')
      ctx.textAlign = 'right'
      ctx.fillText(around.ghost.label, x(label.t), y(label.value) - 7 * devicePixelRatio)
    }
  }
  ctx.restore()
}

/** The last point of the earlier line that is on the screen. */
function namedAt({ t, values }: NonNullable<Around['ghost']>, max: Ms): { t: Ms; value: number } | null {
  for (let index = t.length - 1; index >= 0; index -= 1) {
    const [at, value] = [t[index], values[index]]
    if (at !== undefined && at <= max && typeof value === 'number') return { t: at, value }
  }
  return null
}

/** Hatched from the top, with the word where it finds room. */
function drawBlind(u: uPlot, { from, to, height, label }: Around['blind'][number], font: string): void {
  const { ctx, bbox } = u
  const ratio = devicePixelRatio
  const tall = Math.max(height * bbox.height, 18 * ratio)
  ctx.save()
  ctx.beginPath()
  ctx.rect(from, bbox.top, to - from, tall)
  ctx.clip()
  ctx.strokeStyle = tone('--line')
  ctx.lineWidth = ratio
  ctx.beginPath()
  for (let x = from - tall; x < to; x += 9 * ratio) {
    ctx.moveTo(x, bbox.top + tall)
    ctx.lineTo(x + tall, bbox.top)
  }
  ctx.stroke()
  ctx.font = `700 ${14 * ratio}px ${font}`
  ctx.textAlign = 'center'
  if (ctx.measureText(label).width + 8 * ratio < to - from) {
    ctx.textBaseline = 'middle'
    ctx.lineWidth = 5 * ratio
    ctx.strokeStyle = tone('--paper')
    ctx.fillStyle = tone('--ink')
    ctx.strokeText(label, (from + to) / 2, bbox.top + tall / 2)
    ctx.fillText(label, (from + to) / 2, bbox.top + tall / 2)
  }
  ctx.restore()
}

/** Over the lines: the moment, marks, the names at the ends of the lines. */
export function drawOver(u: uPlot, around: Around): void {
  const { ctx, bbox } = u
  const ratio = devicePixelRatio
  const bottom = bbox.top + bbox.height
  ctx.save()
  // as above
  ctx.setLineDash([])
  ctx.textBaseline = 'middle'
  if (around.now !== null) {
    const x = u.valToPos(around.now, 'x', true)
    ctx.strokeStyle = tone('--ink')
    ctx.lineWidth = 2 * ratio
    ctx.beginPath()
    ctx.moveTo(x, bbox.top)
    ctx.lineTo(x, bottom)
    ctx.stroke()
  }
  for (const mark of around.marks) drawMark(u, mark)
  ctx.font = `700 ${15 * ratio}px ${around.font}`
  ctx.textAlign = 'left'
  const placed = spread(
    around.labels.map((label) => u.valToPos(label.value, label.fire ? 'f' : 'c', true)),
    17 * ratio,
    bbox.top + 8 * ratio,
    bottom - 8 * ratio,
  )
  around.labels.forEach((label, index) => {
    // the scale of the firebox stands at the edge
    const x = besideEnd(u.valToPos(label.t, 'x', true), ctx.measureText(label.text).width, 8 * ratio, bbox.left + bbox.width - 8 * ratio)
    const y = placed[index] ?? 0
    ctx.lineWidth = 5 * ratio
    ctx.lineJoin = 'round'
    ctx.strokeStyle = tone('--paper')
    ctx.strokeText(label.text, x, y)
    ctx.fillStyle = tone('--ink')
    ctx.fillText(label.text, x, y)
  })
  ctx.font = `400 ${14 * ratio}px ${around.font}`
  ctx.fillStyle = tone('--mid')
  if (around.band) {
    const [stop = 0, start = 0] = spread(
      [u.valToPos(around.band.to, 'c', true), u.valToPos(around.band.from, 'c', true)],
      16 * ratio,
      bbox.top,
      bottom - 6 * ratio,
    )
    ctx.fillText(around.band.toLabel, bbox.left + bbox.width + 6 * ratio, stop)
    ctx.fillText(around.band.fromLabel, bbox.left + bbox.width + 6 * ratio, start)
  }
  drawFireScale(u, around)
  ctx.restore()
}

/** The firebox is ten times hotter: its strip has a scale of its own, on the other side. */
function drawFireScale(u: uPlot, { fireTicks }: Around): void {
  const { ctx, bbox } = u
  const ratio = devicePixelRatio
  const x = bbox.left + bbox.width
  const places = fireTicks.map(({ value }) => u.valToPos(value, 'f', true))
  const texts = spread(places, 15 * ratio, bbox.top + 6 * ratio, bbox.top + bbox.height)
  ctx.strokeStyle = tone('--fire')
  ctx.lineWidth = 1.5 * ratio
  ctx.beginPath()
  for (const y of places) {
    ctx.moveTo(x - 5 * ratio, y)
    ctx.lineTo(x, y)
  }
  ctx.moveTo(x, Math.min(...places))
  ctx.lineTo(x, Math.max(...places))
  ctx.stroke()
  ctx.fillStyle = tone('--fire')
  fireTicks.forEach(({ text }, index) => ctx.fillText(text, x + 6 * ratio, texts[index] ?? 0))
}

const repeated = ['refuel', 'wet-condenser', 'swap-bottle', 'air']

/** Acts are filled triangles at the foot, calls open squares above them, alarms open triangles at the top: shape tells, not tone. */
function drawMark(u: uPlot, mark: Curve['marks'][number]): void {
  const { ctx, bbox } = u
  // work that comes again and again is drawn small
  const size = (repeated.includes(mark.code) ? 3.5 : 6) * devicePixelRatio
  const x = u.valToPos(mark.t, 'x', true)
  if (x < bbox.left || x > bbox.left + bbox.width) return
  const foot = bbox.top + bbox.height
  ctx.fillStyle = ctx.strokeStyle = tone('--ink')
  ctx.lineWidth = 2 * devicePixelRatio
  ctx.beginPath()
  if (mark.kind === 'act') {
    ctx.moveTo(x - size, foot - 2 * size)
    ctx.lineTo(x + size, foot - 2 * size)
    ctx.lineTo(x, foot)
    ctx.closePath()
    ctx.fill()
  } else if (mark.kind === 'call') {
    ctx.rect(x - size * 0.8, foot - 4.6 * size, size * 1.6, size * 1.6)
    ctx.stroke()
  } else {
    ctx.moveTo(x, bbox.top)
    ctx.lineTo(x + size, bbox.top + 2 * size)
    ctx.lineTo(x - size, bbox.top + 2 * size)
    ctx.closePath()
    ctx.stroke()
  }
}
