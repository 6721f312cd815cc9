import type { MissingInput, Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { formatValue } from '../../format-value'

export const damageSum = defineItem({
  id: 'damage-sum',
  section: 'materials',
  severity: 'major',
  question: 'Do all dynamic bends together leave life in each conductor layer?',
  titles: { meets: 'The bends together leave life in every layer', fails: 'The bends together use up a layer' },
  appliesTo: { needs: ['several-dynamic-bends', 'conductor-layers'], says: 'designs with two or more dynamic bends' },
  limits: ['damageSumFraction'],
  sourceKeys: ['miner'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  check: (context) => {
    const limit = context.getLimit('damageSumFraction')
    const missing: MissingInput[] = []
    context.design.bends.forEach((bend, index) => {
      if (bend.use === 'dynamic' && bend.requiredCycles === null) {
        missing.push({ path: ['bends', index, 'requiredCycles'], label: `required cycles of bend ${bend.name}` })
      }
    })
    const [first] = missing
    if (first !== undefined) return [notComputed(first.path, first.label, [])]
    return context.damage.map((damage): Outcome => {
      const layer = context.layersById.get(damage.conductorLayerId)
      const shares = damage.contributions
        .filter((share) => share.damage > 0)
        .map(
          ({ bendId, damage: share }) =>
            `${context.design.bends.find((b) => b.id === bendId)?.name ?? bendId} ${formatValue(share)}`,
        )
      return decide({
        value: damage.damageSum,
        limit,
        places: [placeOf('layer', { id: damage.conductorLayerId, name: layer?.name ?? damage.conductorLayerId })],
        what: `damage sum of ${layer?.name ?? damage.conductorLayerId}`,
        equation: 'D = sum(n_i / N_i)',
        sourceKey: 'miner',
        cautions: ['The sum ignores the order of loading.'],
        remark: shares.length === 0 ? undefined : `By bend: ${shares.join(', ')}.`,
      })
    })
  },
})
