/** Room on the left for the ticks, px. Apart from the plot, so that what stands around it does not load the chart library. */
export const leftPx = 46

/** Room on the right for the names of the limits and the firebox's own scale, px. */
export function rightPxOf(width: number): number {
  return width < 700 ? 70 : 84
}
