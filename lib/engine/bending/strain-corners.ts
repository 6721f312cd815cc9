/** A layer's thickness as the search moves it between the ends of its tolerance. */
export interface Coordinate {
  modulusGpa: number
  nominalUm: number
  lowUm: number
  highUm: number
  valueUm: number
}

export type Direction = 'largest' | 'smallest'
export interface RadiusRange {
  nominalUm: number
  lowUm: number
  highUm: number
}

/** Corners settle after two or three sweeps; more would mean a tie that no longer matters. */
const MAX_SWEEPS = 8
/** Gain below which a move counts as rounding, so that the sweeps come to rest. */
const TIE_STRAIN = 1e-15

/**
 * Extreme strain at one face, climbing from nominal one dimension at a time: each thickness, and then the radius, goes
 * to whichever end makes the strain more extreme, sweep after sweep, until none moves.
 */
export function climbToExtreme(
  coordinates: Coordinate[],
  radius: RadiusRange,
  layersInside: number,
  direction: Direction,
): number {
  for (const each of coordinates) each.valueUm = each.nominalUm
  const sign = direction === 'largest' ? 1 : -1
  let radiusUm = radius.nominalUm
  let strain = Number.NaN
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep += 1) {
    const moved = sweepOutward(coordinates, radiusUm, layersInside, sign)
    const { axisUm, faceUm } = locate(coordinates, layersInside)
    const betterRadiusUm = (faceUm - axisUm) * sign > 0 ? radius.lowUm : radius.highUm
    strain = (faceUm - axisUm) / (betterRadiusUm + axisUm)
    if (!moved && betterRadiusUm === radiusUm) break
    radiusUm = betterRadiusUm
  }
  return strain
}

/** One pass from the innermost layer outward; true where a layer moved. */
function sweepOutward(coordinates: Coordinate[], radiusUm: number, layersInside: number, sign: 1 | -1): boolean {
  const start = locate(coordinates, layersInside)
  let { stretching, firstMoment, faceUm } = start
  let score = (sign * (faceUm - start.axisUm)) / (radiusUm + start.axisUm)
  let innerUm = 0
  let outsideStretching = stretching
  let moved = false
  for (const [index, each] of coordinates.entries()) {
    outsideStretching -= each.modulusGpa * each.valueUm
    const beforeUm = each.valueUm
    for (let end = 0; end < 2; end += 1) {
      const valueUm = end === 0 ? each.lowUm : each.highUm
      const changeUm = valueUm - each.valueUm
      if (changeUm === 0) continue
      // The layer grows outward from innerUm and shifts all that lies outside it.
      const newStretching = stretching + each.modulusGpa * changeUm
      const newMoment =
        firstMoment + changeUm * (each.modulusGpa * (innerUm + (valueUm + each.valueUm) / 2) + outsideStretching)
      const newFaceUm = index < layersInside ? faceUm + changeUm : faceUm
      const axisUm = newMoment / newStretching
      const newScore = (sign * (newFaceUm - axisUm)) / (radiusUm + axisUm)
      if (newScore <= score + TIE_STRAIN) continue
      each.valueUm = valueUm
      stretching = newStretching
      firstMoment = newMoment
      faceUm = newFaceUm
      score = newScore
    }
    if (each.valueUm !== beforeUm) moved = true
    innerUm += each.valueUm
  }
  return moved
}

function locate(
  coordinates: readonly Coordinate[],
  layersInside: number,
): { axisUm: number; faceUm: number; stretching: number; firstMoment: number } {
  let depthUm = 0
  let faceUm = 0
  let stretching = 0
  let firstMoment = 0
  let count = 0
  for (const { modulusGpa, valueUm } of coordinates) {
    const stiffness = modulusGpa * valueUm
    stretching += stiffness
    firstMoment += stiffness * (depthUm + valueUm / 2)
    depthUm += valueUm
    count += 1
    if (count === layersInside) faceUm = depthUm
  }
  return { axisUm: firstMoment / stretching, faceUm, stretching, firstMoment }
}

/**
 * Extreme strain at every face at once, from the derivatives at nominal: each thickness goes to the end that its
 * derivative points to. d y_n / d t_k = (E_k (y_k - y_n) + S_k) / S, y_k the layer's outer depth, S_k the stiffness E t
 * outside it, S of all; a layer inside the face also moves the face itself. Which end a layer takes depends on whether
 * it lies inside or outside the face and hardly on which face, so that running sums serve all faces in one pass.
 *
 * @returns one strain per face, index = layers inside it, from 0 (inner surface) to all (outer surface)
 */
export function estimateExtremes(
  coordinates: readonly Coordinate[],
  radius: RadiusRange,
  direction: Direction,
): number[] {
  let totalUm = 0
  let stretching = 0
  let firstMoment = 0
  for (const { modulusGpa, nominalUm } of coordinates) {
    stretching += modulusGpa * nominalUm
    firstMoment += modulusGpa * nominalUm * (totalUm + nominalUm / 2)
    totalUm += nominalUm
  }
  const axisUm = firstMoment / stretching
  // (R + y_n) / (R + y_f) with the face in the middle: it differs from face to face by less than the thickness over R.
  const faceShare = (radius.nominalUm + axisUm) / (radius.nominalUm + totalUm / 2)
  const largest = direction === 'largest'

  let outerUm = 0
  let outsideStretching = stretching
  const ends = coordinates.map(({ modulusGpa, nominalUm, lowUm, highUm }) => {
    outerUm += nominalUm
    outsideStretching -= modulusGpa * nominalUm
    const axisSlope = (modulusGpa * (outerUm - axisUm) + outsideStretching) / stretching
    return {
      modulusGpa,
      insideUm: axisSlope < faceShare === largest ? highUm : lowUm,
      outsideUm: axisSlope > 0 === largest ? lowUm : highUm,
    }
  })

  // Sums over all layers as "outside", then one layer after another changes over to "inside".
  const outside = { stretching: 0, momentAboutOwnInner: 0 }
  for (const { modulusGpa, outsideUm } of [...ends].reverse()) {
    outside.momentAboutOwnInner += outsideUm * outside.stretching + (modulusGpa * outsideUm ** 2) / 2
    outside.stretching += modulusGpa * outsideUm
  }
  const inside = { depthUm: 0, stretching: 0, moment: 0 }
  const extremes: number[] = []
  const pushFace = (): void => {
    const moment = inside.moment + outside.momentAboutOwnInner + inside.depthUm * outside.stretching
    const faceAxisUm = moment / (inside.stretching + outside.stretching)
    const armUm = inside.depthUm - faceAxisUm
    extremes.push(armUm / ((armUm > 0 === largest ? radius.lowUm : radius.highUm) + faceAxisUm))
  }
  pushFace()
  for (const { modulusGpa, insideUm, outsideUm } of ends) {
    outside.stretching -= modulusGpa * outsideUm
    outside.momentAboutOwnInner -= outsideUm * outside.stretching + (modulusGpa * outsideUm ** 2) / 2
    inside.moment += modulusGpa * insideUm * (inside.depthUm + insideUm / 2)
    inside.stretching += modulusGpa * insideUm
    inside.depthUm += insideUm
    pushFace()
  }
  return extremes
}
