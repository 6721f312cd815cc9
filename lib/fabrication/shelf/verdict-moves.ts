import { type DraftEvaluation, getOutcomeVerdict, type Outcome, VERDICT_WORDS, type Verdict } from '@/lib/engine'
import type { ComputedFigure } from '@/lib/engine/units'
import { asComputed, digitsAsComputed } from '@/lib/engine/units'
import type { ParameterAssessment } from '../matrix/assess'
import { CAPABILITY_VERDICTS, type CapabilityVerdict } from '../matrix/verdict'

/** From good to bad; what cannot be judged counts as bad as a failure, since nobody knows. */
const BADNESS: Readonly<Record<Verdict, number>> = {
  'not-applicable': 0,
  meets: 0,
  'thin-margin': 1,
  fails: 2,
  'cannot-tell': 2,
  'not-computed': 2,
}

interface PlacedVerdict {
  readonly title: string
  readonly verdict: Verdict
}

/** The worst verdict of each item at each of its places: a second bend that begins to fail shows beside one that failed. */
function listVerdicts(evaluation: DraftEvaluation): Map<string, PlacedVerdict> {
  const found = new Map<string, PlacedVerdict>()
  for (const item of evaluation.items) {
    for (const outcome of item.outcomes) {
      const at = outcome.places.map(({ name }) => name).join(', ')
      const key = JSON.stringify([item.itemId, outcome.places.map(({ kind, id }) => [kind, id]), nameLimit(outcome)])
      const verdict = getOutcomeVerdict(outcome)
      const other = found.get(key)
      if (other !== undefined && BADNESS[other.verdict] >= BADNESS[verdict]) continue
      found.set(key, { title: `${item.itemId.replaceAll('-', ' ')}${at === '' ? '' : ` (${at})`}`, verdict })
    }
  }
  return found
}

/** One item may hold several comparisons at one place; the limit tells them apart. */
const nameLimit = (outcome: Outcome) => (outcome.kind === 'decided' ? outcome.limit.key : '')

/** Verdicts that got worse, in words: `fatigue life (Hinge): met, now fails`. */
export function findWorseVerdicts(before: DraftEvaluation, after: DraftEvaluation): string[] {
  const old = listVerdicts(before)
  return [...listVerdicts(after)].flatMap(([key, { title, verdict }]) => {
    const was = old.get(key)?.verdict ?? 'not-applicable'
    return BADNESS[verdict] > BADNESS[was]
      ? [`${title}: ${VERDICT_WORDS[was].word}, now ${VERDICT_WORDS[verdict].word}`]
      : []
  })
}

export function findWorseCapability(
  before: readonly ParameterAssessment[],
  after: readonly ParameterAssessment[],
): string[] {
  const order: readonly CapabilityVerdict[] = [...CAPABILITY_VERDICTS].reverse()
  const old = new Map(
    before.flatMap(({ parameter, values }) =>
      values.map(({ place, verdict }) => [`${parameter.key} ${place.kind} ${place.id}`, verdict] as const),
    ),
  )
  return after.flatMap(({ parameter, values }) =>
    values.flatMap(({ place, verdict }) => {
      const was = old.get(`${parameter.key} ${place.kind} ${place.id}`) ?? 'comfortable'
      return order.indexOf(verdict) > order.indexOf(was)
        ? [`${parameter.name} (${place.name}): ${was.replace('-', ' ')}, now ${verdict.replace('-', ' ')}`]
        : []
    }),
  )
}

/** What moved between two evaluations of constructions that differ in a sheet, in words with numbers. */
export function describeMoves(before: DraftEvaluation, after: DraftEvaluation): string[] {
  const thicknesses = after.zones.flatMap((zone) => {
    const was = before.zones.find(({ zoneId }) => zoneId === zone.zoneId)
    return was === undefined || Math.abs(was.thicknessUm - zone.thicknessUm) < 0.05
      ? []
      : [
          `${zone.name}: thickness ${digitsAsComputed(was.thicknessUm, 'thicknessUm')} to ${asComputed(zone.thicknessUm, 'thicknessUm')}`,
        ]
  })
  const bends = after.bends.flatMap((bend) => {
    const was = before.bends.find(({ bendId }) => bendId === bend.bendId)
    if (was === undefined) return []
    return [
      ...describeMove(`${bend.name}: peak strain`, was.peakStrainPct, bend.peakStrainPct, 'strainPct'),
      ...describeMove(
        `${bend.name}: minimum radius by strain`,
        was.minRadiusByStrainMm,
        bend.minRadiusByStrainMm,
        'minRadiusMm',
      ),
    ]
  })
  const old = listVerdicts(before)
  const better = [...listVerdicts(after)].flatMap(([key, { title, verdict }]) => {
    const was = old.get(key)?.verdict
    return was !== undefined && BADNESS[verdict] < BADNESS[was]
      ? [`${title}: ${VERDICT_WORDS[was].word}, now ${VERDICT_WORDS[verdict].word}`]
      : []
  })
  return [...thicknesses, ...bends, ...better]
}

function describeMove(what: string, from: number | null, to: number | null, figure: ComputedFigure): string[] {
  if (from === null || to === null) return []
  const [was, is] = [digitsAsComputed(from, figure), asComputed(to, figure)]
  return was === digitsAsComputed(to, figure) ? [] : [`${what} ${was} to ${is}`]
}
