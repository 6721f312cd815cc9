import { requireNumber } from '../numerics'

/** 1 lbf/in2 in pascals: 4.4482216152605 N over (0.0254 m)^2, exact by definition. */
const PASCAL_PER_PSI = 4.4482216152605 / 0.0254 ** 2

/**
 * @param modulusPsi  any finite number
 * @returns GPa
 * @throws  RangeError if not finite
 * Source   SOURCES.exactArithmetic
 * @example gpaFromPsi(370000) is about 2.551
 */
export function gpaFromPsi(modulusPsi: number): number {
  return requireNumber('modulusPsi', modulusPsi, {}) * PASCAL_PER_PSI * 1e-9
}

/** Inverse of gpaFromPsi; same errors. */
export function psiFromGpa(modulusGpa: number): number {
  return (requireNumber('modulusGpa', modulusGpa, {}) * 1e9) / PASCAL_PER_PSI
}
