import type { Span } from '../numerics'
import type { QuantityRange } from '../results'
import { bendStack, type ElasticStack } from './elastic-stack'

/** Corners settle after two or three rounds. */
const MAX_ROUNDS = 6

/**
 * How far the middle of a conductor lies from the elastic axis of its stack, as a share of the thickness, over tolerances and constants.
 *
 * Model    s = (y_m - y_n) / t, at its least and its greatest: each thickness and modulus goes to the end that the derivative of s points
 *          to, and so on from there until none moves. d y_n / d E_i = t_i (y_i - y_n) / sum(E t);
 *          d y_n / d t_i = (E_i (y_i + t_i/2 - y_n) + sum(E t, i+1..)) / sum(E t).
 * @param first, last  layers of the conductor: its foil, and its plating where it has one
 */
export function findAxisOffsetRange(stack: ElasticStack, first: number, last: number): QuantityRange {
  const ends = [findExtreme(stack, first, last, -1), findExtreme(stack, first, last, 1)] as const
  const [least, greatest] = ends
  return {
    low: least <= 0 && greatest >= 0 ? 0 : Math.min(Math.abs(least), Math.abs(greatest)),
    high: Math.max(Math.abs(least), Math.abs(greatest)),
  }
}

function findExtreme({ thicknessUm, modulusGpa }: ElasticStack, first: number, last: number, sign: 1 | -1): number {
  let t = thicknessUm.map(({ nominal }) => nominal)
  let e = modulusGpa.map(({ nominal }) => nominal)
  let extreme = Number.NEGATIVE_INFINITY
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const { share, perThickness, perModulus } = differentiate(t, e, first, last)
    if (sign * share <= extreme) break
    extreme = sign * share
    t = thicknessUm.map((span, at) => takeEnd(span, sign * (perThickness[at] ?? 0)))
    e = modulusGpa.map((span, at) => takeEnd(span, sign * (perModulus[at] ?? 0)))
  }
  return sign * extreme
}

const takeEnd = ({ low, nominal, high }: Span, gain: number): number => (gain > 0 ? high : gain < 0 ? low : nominal)

function differentiate(t: readonly number[], e: readonly number[], first: number, last: number) {
  const { axisUm, depthUm, stretching } = bendStack(e, t)
  let insideUm = 0
  let ownUm = 0
  for (let at = 0; at <= last; at += 1) {
    if (at < first) insideUm += t[at] ?? 0
    else ownUm += t[at] ?? 0
  }
  const share = (insideUm + ownUm / 2 - axisUm) / depthUm
  const perThickness: number[] = new Array(t.length)
  const perModulus: number[] = new Array(t.length)
  let toOuterEdgeUm = depthUm
  let outside = 0
  for (let at = t.length - 1; at >= 0; at -= 1) {
    const own = t[at] ?? 0
    const modulus = e[at] ?? 0
    const middleUm = toOuterEdgeUm - own / 2
    const axisShift = (modulus * (toOuterEdgeUm - axisUm) + outside) / stretching
    const middleShift = at < first ? 1 : at <= last ? 0.5 : 0
    perThickness[at] = (middleShift - axisShift - share) / depthUm
    perModulus[at] = (-own * (middleUm - axisUm)) / stretching / depthUm
    outside += modulus * own
    toOuterEdgeUm -= own
  }
  return { share, perThickness, perModulus }
}
