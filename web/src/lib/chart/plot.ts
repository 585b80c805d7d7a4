import uPlot from 'uplot'
import type { Ms } from '../../../../server/contract/fold.ts'
import type { Curve } from '../../../../server/contract/live.ts'
import { drawOver, drawUnder, type Around } from './draw.ts'
import { drawnSeries, lines, tone } from './lines.ts'
import { leftPx } from './plot-places.ts'
import { fireRange, mainRange, mostOf, mostOfForecast, ticksOf } from './scales.ts'

export interface PlotInput {
  curve: Curve
  view: { from: Ms; to: Ms }
  around: Around
  unit: 'C' | 'F'
  degrees: (celsius: number) => number
  clock: (at: Ms) => string
  /** Room on the right for the names of the limits, px. */
  rightPx: number
  oncursor?: ((index: number | null) => void) | undefined
}

export function columnsOf(curve: Curve): uPlot.AlignedData {
  return [curve.t, ...drawnSeries(curve).map(({ values }) => (values.length > 0 ? values : curve.t.map(() => null)))]
}

/** The only place that knows the chart library. `input` is read anew at every drawing, so a theme or unit needs only a redraw. */
export function makePlot(root: HTMLElement, size: { width: number; height: number }, input: () => PlotInput): uPlot {
  const most = (): number => {
    const { curve, around } = input()
    return Math.max(
      mostOf(
        drawnSeries(curve)
          .filter((one) => one.key !== 'firebox')
          .map((one) => one.values),
      ),
      Math.ceil(mostOfForecast(around.forecast) / 100) * 100,
    )
  }
  const fireMost = (): number =>
    mostOf(
      drawnSeries(input().curve)
        .filter((one) => one.key === 'firebox')
        .map((one) => one.values),
      900,
    )
  const font = (): string => `${14 * devicePixelRatio}px ${input().around.font}`
  const options: uPlot.Options = {
    ...size,
    ms: 1,
    padding: [6, input().rightPx, 0, 0],
    legend: { show: false },
    cursor: { drag: { x: false, y: false }, points: { show: false }, y: false },
    scales: {
      x: { time: true, range: () => [input().view.from, input().view.to] },
      c: { range: () => mainRange(most()) },
      f: { range: () => fireRange(fireMost()) },
    },
    axes: [
      {
        scale: 'x',
        size: 22,
        gap: 2,
        font: font(),
        stroke: () => tone('--mid'),
        grid: { show: false },
        ticks: { show: false },
        space: 90,
        values: (_plot, splits) => splits.map((at) => input().clock(at)),
      },
      {
        scale: 'c',
        size: leftPx,
        gap: 2,
        font: font(),
        stroke: () => tone('--mid'),
        grid: { stroke: () => tone('--hair'), width: 1.5 },
        ticks: { show: false },
        splits: (plot) => ticksOf(most(), input().unit, plot.bbox.height / devicePixelRatio),
        values: (_plot, splits) => splits.map((value) => String(input().degrees(value))),
      },
    ],
    series: [
      {},
      ...drawnSeries(input().curve).map(({ key }) => ({
        scale: key === 'firebox' ? 'f' : 'c',
        stroke: () => tone(lines[key].tone),
        width: lines[key].width,
        dash: lines[key].dash,
        points: { show: false },
        spanGaps: false,
      })),
    ],
    hooks: {
      drawClear: [(u) => drawUnder(u, input().around)],
      draw: [(u) => drawOver(u, input().around)],
      setCursor: [(u) => input().oncursor?.(u.cursor.idx ?? null)],
    },
  }
  return new uPlot(options, columnsOf(input().curve), root)
}
