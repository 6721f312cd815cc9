import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { getRadiusRangeMm, isDynamic, listBends, notComputedLayers, notComputedUse, placeOf } from '../../checks'
import { decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'
import { isFlexibleMask } from '../../flexible-mask'
import { TIGHTER_BEND } from '../../monotone'

export const solderMaskInBend = defineItem({
  id: 'solder-mask-in-bend',
  section: 'materials',
  severity: 'major',
  question: 'Are bends free of solder mask, except flexible mask in wide bends that do not move?',
  titles: { meets: 'No solder mask cracks in a bend', fails: 'Solder mask covers a bend' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: ['flexibleMaskRadiusMm'],
  sourceKeys: ['commonPractice'],
  restsOn: ['construction.layers', 'construction.zones', 'materials', 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [...TIGHTER_BEND],
  check: (context) =>
    listBends(context).flatMap((checked): Outcome[] => {
      const { bend, zone, place } = checked
      const unknown = notComputedLayers(checked)
      if (unknown !== null) return [unknown]
      const masks = (zone?.layers ?? []).filter((layer) => layer.kind === 'solder-mask')
      const placesOf = (layers: typeof masks) => [
        place,
        ...layers.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name })),
      ]
      const flexible = masks.filter(({ layerId }) => isFlexibleMask(context, layerId))
      if (flexible.length > 0 && bend.use === null) return [notComputedUse(checked)]
      const cracking = isDynamic(bend) ? masks : masks.filter((mask) => !flexible.includes(mask))
      const none = decide({
        value: cracking.length,
        limit: makeNoneAllowed('solderMaskLayersInBendCount', 'commonPractice'),
        places: placesOf(cracking),
        what: `solder mask layers that crack in ${callByName('bend', bend.name)}`,
        equation: 'count of layers',
      })
      if (isDynamic(bend) || flexible.length === 0) return [none]
      return [
        none,
        decide({
          value: bend.insideRadiusMm,
          range: getRadiusRangeMm(bend),
          limit: context.getLimit('flexibleMaskRadiusMm'),
          places: placesOf(flexible),
          what: `inside radius of ${callByName('bend', bend.name)} under flexible mask`,
          equation: 'inside radius over its tolerance',
        }),
      ]
    }),
})
