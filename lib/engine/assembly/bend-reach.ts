import { LEAST_RADIUS_RATIO, type Leaf } from '../bending'
import type { Bend } from '../design'
import { roundToDigits } from '../numerics'
import type { ModelLimit } from '../results'
import { inSentence } from '../units'
import type { ConductorEntry } from './conductor-entry'

/** Strain of copper past which a thin foil may neck or crack at its grains: our choice. */
const LARGE_COPPER_STRAIN_PCT = 5
/** Compression of the inner face past which thin films may wrinkle or come off: our choice, about the yield of films. */
const LARGE_COMPRESSION_PCT = 3

/**
 * The least radius over thickness at which a strain can be told is the floor of every bend, whatever its use; the radius counts at the
 * tight end of its tolerance.
 */
export function listRadiusLimits(bend: Bend, leaves: readonly Leaf[]): ModelLimit[] {
  let least = Number.POSITIVE_INFINITY
  for (const { section, insideRadiusMm, strain } of leaves) {
    if (strain.conductors.length === 0) continue
    least = Math.min(least, ((insideRadiusMm - bend.radiusToleranceMm) * 1000) / section.totalThicknessUm)
  }
  if (least >= LEAST_RADIUS_RATIO) return []
  return [
    {
      kind: 'tight-radius',
      because: `below an inside radius of ${LEAST_RADIUS_RATIO} times the thickness no strain is known to be right (here ${inSentence(roundToDigits(least, 2))} times at its tightest)`,
      decidedBy: 'fold samples and section them, or use a larger radius',
    },
  ]
}

/** The same of a fold that was made before: nobody can tell what a tighter one leaves of the copper. */
export function listFoldReachLimits(bend: Bend, leaves: readonly Leaf[]): ModelLimit[] {
  const { foldedToRadiusMm } = bend
  if (foldedToRadiusMm === null) return []
  let least = Number.POSITIVE_INFINITY
  for (const { section, innerDepthUm, strain } of leaves) {
    if (strain.conductors.length === 0) continue
    const tightestUm = (foldedToRadiusMm - bend.radiusToleranceMm) * 1000 + innerDepthUm
    least = Math.min(least, Math.max(0, tightestUm) / section.totalThicknessUm)
  }
  if (least >= LEAST_RADIUS_RATIO) return []
  return [
    {
      kind: 'loads',
      because: `it is folded first to an inside radius of ${inSentence(foldedToRadiusMm, 'mm')}, and below ${LEAST_RADIUS_RATIO} times the thickness no strain is known to be right (here ${inSentence(roundToDigits(least, 2))} times at its tightest)`,
      decidedBy: 'fold samples and flex them, or fold to a larger radius',
    },
  ]
}

/** What a tight fold does that no figure here says. */
export function listFoldCautions(leaves: readonly Leaf[], conductors: readonly ConductorEntry[]): string[] {
  const cautions: string[] = []
  const strained = conductors.filter(({ result }) => result.firstBendStrainPct > LARGE_COPPER_STRAIN_PCT)
  if (strained.length > 0) {
    cautions.push(
      `${strained.map(({ result }) => result.name).join(', ')}: more than ${LARGE_COPPER_STRAIN_PCT} % strain. Thin foil may neck or crack at its grains before its average strain is used up: fold samples.`,
    )
  }
  const compressed = leaves.some(
    ({ strain }) => strain.conductors.length > 0 && strain.innerSurfacePct < -LARGE_COMPRESSION_PCT,
  )
  if (compressed) {
    cautions.push(
      `The inner face is compressed by more than ${LARGE_COMPRESSION_PCT} %: wrinkling of its film and copper is not computed. Look at samples from the inside.`,
    )
  }
  return cautions
}
