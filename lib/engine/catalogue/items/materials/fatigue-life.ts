import { LIFE_CAUTION } from '../../../cautions'
import { callByName } from '../../../design'
import {
  type BendResult,
  type DecidedOutcome,
  describeOwnTests,
  formatReading,
  type KnownAtLeast,
  type Outcome,
  type Place,
  readRelationLife,
  readRelationLifeRange,
} from '../../../results'
import { inSentence } from '../../../units'
import { checkDynamicBends, placeOf } from '../../checks'
import { cannotTell, decide, makeDesignLimit, notApplicable, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS, TEMPERATURE_INPUTS } from '../../item-inputs'
import { BEYOND_REACH } from '../../life-reach'
import { AT_LEAST_RADIUS, withinModel } from '../../model-reach'
import { LONGER_LIFE, MORE_STATES, TIGHTER_BEND, WIDER_TOLERANCES } from '../../monotone'

export const fatigueLife = defineItem({
  id: 'fatigue-life',
  section: 'materials',
  severity: 'blocking',
  question: 'Does each dynamic bend reach its required cycles at the chosen survival percentile?',
  titles: {
    meets: 'Dynamic bends reach their required cycles',
    fails: 'A dynamic bend falls short of its required cycles',
  },
  appliesTo: { needs: ['dynamic-bends', 'conductor-layers'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['fatigueDuctility', 'weibull'],
  restsOn: [...SECTION_INPUTS, 'bends', ...TEMPERATURE_INPUTS, 'brief.lifeSurvivalPct', 'brief.lifeWeibullSlope'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [...TIGHTER_BEND, ...LONGER_LIFE, ...WIDER_TOLERANCES, ...MORE_STATES],
  check: (context) =>
    checkDynamicBends(context, ({ bend, result, index, place }): Outcome => {
      if (result.conductors.length === 0)
        return notApplicable(`no conductor runs through ${callByName('bend', bend.name)}`, [place])
      if (bend.requiredCycles === null) {
        return notComputed(['bends', index, 'requiredCycles'], `required cycles of ${callByName('bend', bend.name)}`, [
          place,
        ])
      }
      const { survivalLifeCycles, survivalPct } = result
      if (survivalLifeCycles === null) {
        return result.missing.length > 0
          ? notComputedFrom(result.missing, [place])
          : notComputed(['bends', index, 'zoneId'], `conductor in ${callByName('bend', bend.name)}`, [place])
      }
      const worst = result.conductors.find((conductor) => conductor.survivalLifeCycles === survivalLifeCycles)
      const ends = readRelationLifeRange(result)
      const median = readRelationLife(result, 'median')
      const tests = describeOwnTests(result)
      const what = `life of ${callByName('bend', bend.name)} at ${inSentence(survivalPct, 'pct')} survival`
      const places = worst === undefined ? [place] : [place, placeOf('layer', { id: worst.layerId, name: worst.name })]
      const decided = decide({
        value: survivalLifeCycles,
        range: result.survivalLifeRangeCycles ?? undefined,
        rangeOver: 'both',
        bound: readRelationLife(result)?.bound,
        ...(ends === null ? {} : { rangeBounds: { low: ends.low.bound, high: ends.high.bound } }),
        limit: makeDesignLimit({
          key: 'requiredCycles',
          value: bend.requiredCycles,
          unit: 'cycles',
          sense: 'at-least',
          sourceKey: 'fatigueDuctility',
          name: 'required cycles',
        }),
        places,
        what,
        equation: 'fatigue-ductility relation, Weibull percentile',
        sourceKey: 'fatigueDuctility',
        cautions: result.cautions,
        remark:
          median === null
            ? undefined
            : `Median ${formatReading(median, ({ value, unit }) => inSentence(value, unit))}${tests === null ? '' : `, ${tests}`}. ${LIFE_CAUTION}`,
      })
      return withinModel(result, judgeReach(decided, result, what, place), (known) =>
        judgeAtLeast(known, decided, what),
      )
    }),
})

/** At the least radius that can be told, the least life of all copper: a bound of what a tighter bend reaches. */
function judgeAtLeast(
  { conductors }: KnownAtLeast,
  { limit, places, equation, cautions }: DecidedOutcome,
  what: string,
): Outcome | null {
  const lives = conductors.flatMap((conductor) => readRelationLife(conductor) ?? [])
  const least = lives.toSorted((a, b) => a.value - b.value)[0]
  if (least === undefined || least.bound === 'longer-than') return null
  return decide({
    value: least.value,
    bound: 'shorter-than',
    limit,
    places,
    what,
    equation,
    sourceKey: 'fatigueDuctility',
    cautions,
    remark: AT_LEAST_RADIUS,
  })
}

/** A life past the relation's end is longer than its figure, so that the figure fails nothing; nor does strength alone meet anything. */
function judgeReach(decided: DecidedOutcome, result: BendResult, what: string, place: Place): Outcome {
  if (decided.verdict === 'fails') {
    return result.isLifeAtCap ? cannotTell(what, BEYOND_REACH.beyond, decided.places, decided) : decided
  }
  const unsure = result.conductors.find(({ lifeReach }) => lifeReach !== null && lifeReach !== 'within')
  if (unsure?.lifeReach == null || unsure.lifeReach === 'within') return decided
  return cannotTell(
    what,
    BEYOND_REACH[unsure.lifeReach],
    [place, placeOf('layer', { id: unsure.layerId, name: unsure.name })],
    decided,
  )
}
