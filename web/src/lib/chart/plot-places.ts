/** Room on the left for the ticks, px. Apart from the plot, so that what stands around it does not load the chart library. */
export const leftPx = 46
