import { callByName } from '../../../design'
import { DAMAGE_SUM_AT_FAILURE } from '../../../life'
import {
  type DamageResult,
  type DecidedOutcome,
  type MissingInput,
  type ModelLimit,
  type Outcome,
  readDamageBound,
} from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { cannotTell, computeMargin, decide, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { BEYOND_REACH } from '../../life-reach'
import { LONGER_LIFE, MORE_STATES, TIGHTER_BEND, WIDER_TOLERANCES } from '../../monotone'

export const damageSum = defineItem({
  id: 'damage-sum',
  section: 'materials',
  severity: 'major',
  question: 'Do all dynamic bends together leave life in each conductor layer?',
  titles: { meets: 'The bends together leave life in every layer', fails: 'The bends together use up a layer' },
  appliesTo: { needs: ['several-dynamic-bends', 'conductor-layers'], says: 'designs with two or more dynamic bends' },
  limits: ['damageSumFraction'],
  sourceKeys: ['miner'],
  restsOn: [...SECTION_INPUTS, 'bends', 'brief.lifeSurvivalPct', 'brief.lifeWeibullSlope'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [...TIGHTER_BEND, ...LONGER_LIFE, ...WIDER_TOLERANCES, ...MORE_STATES],
  check: (context) => {
    const limit = context.getLimit('damageSumFraction')
    const missing: MissingInput[] = []
    context.design.bends.forEach((bend, index) => {
      if (bend.use === 'dynamic' && bend.requiredCycles === null) {
        missing.push({
          path: ['bends', index, 'requiredCycles'],
          label: `required cycles of ${callByName('bend', bend.name)}`,
        })
      }
    })
    context.design.bends.forEach((bend, index) => {
      if (bend.use === null)
        missing.push({ path: ['bends', index, 'use'], label: `use of ${callByName('bend', bend.name)}` })
    })
    // A bend whose section is not known uses up life all the same: the sum of the others would be too kind.
    for (const { use, conductors, missing: lacking } of context.bends) {
      if (use === 'dynamic' && conductors.length === 0) missing.push(...lacking)
    }
    if (missing.length > 0) return [notComputedFrom(missing, [])]
    return context.damage.map((damage): Outcome => {
      const layer = context.layersById.get(damage.conductorLayerId)
      const shares = damage.contributions
        .filter((share) => share.damage > 0)
        .map(
          ({ bendId, damage: share }) =>
            `${context.design.bends.find((b) => b.id === bendId)?.name ?? bendId} ${inSentence(share)}`,
        )
      const what = `damage sum of ${layer?.name ?? damage.conductorLayerId}`
      const decided = decide({
        value: damage.damageSum,
        bound: readDamageBound(damage),
        range: damage.damageRange,
        rangeOver: 'both',
        limit,
        places: [placeOf('layer', { id: damage.conductorLayerId, name: layer?.name ?? damage.conductorLayerId })],
        what,
        equation: 'D = sum(n_i / N_i)',
        sourceKey: 'miner',
        cautions: [
          `Failures were seen at sums of ${DAMAGE_SUM_AT_FAILURE.low} to ${DAMAGE_SUM_AT_FAILURE.high}; the sum ignores the order of loading.`,
        ],
        remark: shares.length === 0 ? undefined : `By bend: ${shares.join(', ')}.`,
      })
      const { beyondModel } = damage
      return beyondModel === null
        ? judgeReach(decided, damage, what)
        : judgeBeyondModel(decided, damage, beyondModel.limit, what)
    })
  },
})

/** Lives past the relation's end bring at most what is counted for them, and lives by tensile strength alone prove nothing. */
function judgeReach(decided: DecidedOutcome, damage: DamageResult, what: string): Outcome {
  const { limit, places } = decided
  if (decided.verdict === 'fails') {
    return computeMargin(damage.damageSum - damage.cappedDamageSum, limit) < 0
      ? decided
      : cannotTell(what, BEYOND_REACH.beyond, places, decided)
  }
  return damage.ductilityDamageSum === null || computeMargin(damage.ductilityDamageSum, limit) >= 0
    ? decided
    : cannotTell(what, BEYOND_REACH['strength-governed'], places, decided)
}

/** What a bend brings whose strain nobody can tell may be anything; what the others bring, and it at least, may be too much already. */
function judgeBeyondModel(
  decided: DecidedOutcome,
  damage: DamageResult,
  modelLimit: ModelLimit,
  what: string,
): Outcome {
  const { limit, places, value } = decided
  return computeMargin(damage.leastDamageSum, limit) < 0
    ? decided
    : cannotTell(what, modelLimit, places, { value, limit })
}
