import { checkDynamicBends, placeOf } from '../../checks'
import { decide, makeSourceLimit } from '../../decide'
import { defineItem } from '../../define-item'
import { TIGHTER_BEND, WIDER_TOLERANCES } from '../../monotone'

export const copperYield = defineItem({
  id: 'copper-yield',
  section: 'materials',
  severity: 'advice',
  question: 'Does the copper of each dynamic bend stay below its yield point?',
  titles: { meets: 'Copper stays elastic in dynamic bends', fails: 'Copper yields in a dynamic bend' },
  appliesTo: { needs: ['dynamic-bends', 'conductor-layers'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['plasticBending'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [...TIGHTER_BEND, ...WIDER_TOLERANCES],
  check: (context) =>
    checkDynamicBends(context, ({ bend, result, place }) =>
      result.conductors.map((conductor) =>
        decide({
          value: conductor.peakStrainPct,
          range: conductor.peakRangePct,
          limit: makeSourceLimit({
            key: 'yieldStrainPct',
            value: conductor.yieldStrainPct,
            unit: 'pct',
            sense: 'at-most',
            sourceKey: 'plasticBending',
          }),
          places: [place, placeOf('layer', { id: conductor.layerId, name: conductor.name })],
          what: `strain of ${conductor.name} in bend ${bend.name}`,
          equation: 'yield strain = yield strength / modulus',
          sourceKey: 'plasticBending',
          cautions: conductor.pastYield
            ? ['Strain is that of the formed section, whose axis moves as copper yields; the bend keeps some set.']
            : [],
        }),
      ),
    ),
})
