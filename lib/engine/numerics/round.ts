/** Rounds to so many decimals, for values that are calculated on or drawn. What people read goes through `units`. */
export function roundTo(value: number, decimals: number): number {
  return Number(value.toFixed(decimals))
}

/** Rounds to so many significant digits, as `roundTo` does to decimals. */
export function roundToDigits(value: number, digits: number): number {
  return Number(value.toPrecision(digits))
}

/** Twelve digits hide the last bits that arithmetic leaves (0.1 + 0.2), and nothing that anybody typed. */
export function tidy(value: number): number {
  return roundToDigits(value, 12)
}
