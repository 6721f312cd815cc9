import type { Bend } from '../design'
import { roundToDigits } from '../numerics'
import type { BendResult, ConductorStrainResult } from '../results'
import { inSentence } from '../units'
import { type LeafForRules, listCopperSpans } from './bend-rules'

/** Radii closer than this say the same to anybody who builds: a quarter. */
const AGREEMENT_RATIO = 1.25
/** An axis this close to where the formula assumes it moves the strain by less than its tolerance, um. */
const SAME_AXIS_UM = 1

interface Compared {
  readonly bend: Bend
  readonly leaves: readonly LeafForRules[]
  readonly governing: ConductorStrainResult | null
  readonly allowablePct: number | null
  readonly minRadiusByStrainMm: number | null
  readonly handbook: BendResult['handbook']
  readonly ratio: BendResult['ratio']
}

/**
 * Why the three radii that people quote for one bend differ, in sentences with their numbers; none where they agree.
 */
export function explainDisagreement(compared: Compared): string[] {
  const { minRadiusByStrainMm: byStrain, handbook, ratio, governing } = compared
  if (byStrain === null || governing === null) return []
  const sentences: string[] = []
  if (handbook.clamped) {
    sentences.push(
      'The handbook formula goes below zero here: it has no floor, and says only that copper is not what limits this fold.',
    )
  } else if (handbook.minRadiusMm !== null && differ(handbook.minRadiusMm, byStrain)) {
    sentences.push(...explainHandbook(compared, handbook.minRadiusMm, byStrain))
  }
  if (ratio.minRadiusMm !== null && differ(ratio.minRadiusMm, byStrain)) {
    sentences.push(...explainRatio(compared, ratio.minRadiusMm, byStrain))
  } else if (ratio.advisedAgainst) {
    sentences.push(`${ratio.tableName} advises against this number of conductor layers in this use, at any radius.`)
  }
  return sentences
}

function differ(oneMm: number, otherMm: number): boolean {
  const larger = Math.max(oneMm, otherMm)
  return larger > 0 && larger > AGREEMENT_RATIO * Math.min(oneMm, otherMm)
}

function explainHandbook(
  { leaves, bend, governing, allowablePct, handbook }: Compared,
  handbookMm: number,
  byStrainMm: number,
): string[] {
  const sentences = [
    `The handbook formula asks for ${mm(handbookMm)}, the strain of this section for ${mm(byStrainMm)}.`,
  ]
  if (handbook.deformationPct !== null && allowablePct !== null && differ(handbook.deformationPct, allowablePct)) {
    sentences.push(
      bend.use === 'dynamic'
        ? `The formula allows copper ${pct(handbook.deformationPct)} in any dynamic use; for ${cycles(bend.requiredCycles)} at the survival asked for the fatigue relation allows ${pct(allowablePct)}.`
        : `The formula allows copper ${pct(handbook.deformationPct)}; this foil's record allows ${pct(allowablePct)}.`,
    )
  }
  const leaf = leaves[governing?.leafIndex ?? 0]
  if (leaf !== undefined) {
    const assumedUm = findAssumedAxisUm(leaf)
    const offsetUm = assumedUm === null ? 0 : leaf.section.neutralAxisUm - assumedUm
    if (Math.abs(offsetUm) >= SAME_AXIS_UM) {
      sentences.push(
        `The formula puts the neutral axis ${leaf.conductors.length === 1 ? 'in the middle of the copper' : 'midway between the conductors'}; unequal copper and covers put it ${um(Math.abs(offsetUm))} nearer the ${offsetUm > 0 ? 'outside' : 'inside'}.`,
      )
    }
  }
  return sentences
}

/** Depth at which the formula has its axis: mid-copper, halfway between two conductors, or the mid-plane. */
function findAssumedAxisUm(leaf: LeafForRules): number | null {
  const copper = listCopperSpans(leaf)
  const first = copper[0]
  const last = copper[copper.length - 1]
  if (first === undefined || last === undefined) return null
  if (copper.length > 2) return leaf.section.totalThicknessUm / 2
  return copper.length === 1
    ? (first.innerDepthUm + first.outerDepthUm) / 2
    : (first.outerDepthUm + last.innerDepthUm) / 2
}

function explainRatio(
  { ratio, governing, allowablePct, leaves }: Compared,
  ratioMm: number,
  byStrainMm: number,
): string[] {
  const sentences = [
    `${ratio.tableName} asks for ${ratio.required} times the thickness, ${mm(ratioMm)}; the strain of this section asks for ${mm(byStrainMm)}.`,
  ]
  if (governing !== null && allowablePct !== null) {
    sentences.push(
      `A ratio knows the thickness only: at this radius it means ${pct(ratio.surfaceStrainPct)} at the surface, while ${governing.name} sees ${pct(governing.peakStrainPct)} of an allowable ${pct(allowablePct)}.`,
    )
  }
  if (leaves.length > 1) {
    sentences.push(
      'The leaves are not bonded and bend one by one, so the whole thickness overstates what each of them sees.',
    )
  }
  return sentences
}

/** Computed radii and thicknesses, even where three digits happen to be all. */
const mm = (value: number): string => inSentence(roundToDigits(value, 3), 'mm')
const um = (value: number): string => inSentence(roundToDigits(value, 3), 'um')
const pct = (value: number): string => inSentence(roundToDigits(value, 3), 'pct')
const cycles = (value: number | null): string => (value === null ? 'the required life' : inSentence(value, 'cycles'))
