// Messages on `readings` and what has to come of each. Every outcome is stated from a rule, by its number in brackets: RFC 8259 (JSON), RFC 8428,
// 8798 and 9100 (SenML), RFC 3629 (UTF-8), the wire format's own rules (W), or the classes of bad input (R: reliability.md, section 5).

export interface Case {
  /** Class of section 5 and the rule that decides. */
  rule: string
  what: string
  payload: string | Uint8Array
  /**
   * Samples as `channel=value`, with `@-3s` where not of now and `?` where doubted, then refusals as `!reason` (the whole message) or
   * `!reason#record`. The channels `x` and `wall` are not announced; `outlet` (ds18b20), `probe` (type K, linearised) and `co` are.
   */
  outcome: string
}

export const beside = '{"n":"wall","v":20}'
/** A pack of two records, the second of them good. */
export const two = (first: string): string => `[{"bn":"yard/n1/","bu":"Cel",${first}},${beside}]`
export const x = (value: string): string => two(`"n":"x","v":${value}`)
export const wall = 'wall=20'

/** `now` of the test, Unix s. */
export const nowS = Date.UTC(2026, 2, 1, 6) / 1000
