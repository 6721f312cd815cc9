import type { Outcome } from '../../../results'
import { BRIEF_PLACE, placeOf } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const operatingTemperature = defineItem({
  id: 'operating-temperature',
  section: 'materials',
  severity: 'major',
  question: 'Does every adhesive and film bear the hottest operation?',
  titles: {
    meets: 'Materials bear the operating temperature',
    fails: 'A material is too weak for the operating temperature',
  },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: ['temperatureMarginDegC'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  check: (context) => {
    const { operatingMaxDegC } = context.design.brief
    if (operatingMaxDegC === null) {
      return [notComputed(['brief', 'operatingMaxDegC'], 'highest operating temperature', [BRIEF_PLACE])]
    }
    const limit = context.getLimit('temperatureMarginDegC')
    const outcomes: Outcome[] = []
    const seen = new Set<string>()
    context.design.construction.layers.forEach((layer, index) => {
      if (layer.kind === 'unbonded-gap' || layer.kind === 'conductor' || seen.has(layer.materialId)) return
      seen.add(layer.materialId)
      const material = context.findMaterial(layer.materialId)
      const places = [placeOf('layer', layer)]
      if (material === null || material.maxServiceDegC === null) {
        outcomes.push(
          notComputed(
            ['construction', 'layers', index, 'materialId'],
            `service temperature of ${material?.name ?? layer.materialId}`,
            places,
          ),
        )
        return
      }
      outcomes.push(
        decide({
          value: material.maxServiceDegC.value - operatingMaxDegC,
          limit,
          places,
          what: `temperature margin of ${material.name}`,
          equation: 'service temperature - highest operating temperature',
        }),
      )
    })
    return outcomes
  },
})
