// Made by `npm run sealed-teach`: weights of the signs in ../leak.ts, in their order.
export const leakBase = -5.501
export const leakWeights: readonly number[] = [-3.31, 0.088, -2.277, 2.233, -2.174, -0.258, 1.148]
