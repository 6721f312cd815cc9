import type { EvaluationContext } from '../../../context'
import { countLeastLaminations } from '../../../design'
import type { MissingInput, Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { listConductorLayers } from '../../needs'

type Hole = EvaluationContext['design']['features']['holes'][number]

export const viaStructure = defineItem({
  id: 'via-structure',
  section: 'fabrication',
  severity: 'major',
  question:
    'Does each plated hole state which layers it joins and whether it is filled, and do these layers exist there?',
  titles: { meets: 'Plated holes state their layers', fails: 'A plated hole joins layers that its zone does not have' },
  appliesTo: { needs: ['plated-holes'], says: 'designs with plated holes' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.holes.*.plated',
    'features.holes.*.fromLayerId',
    'features.holes.*.toLayerId',
    'features.holes.*.filling',
    'features.holes.*.zoneId',
    'construction.layers',
    'construction.zones',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    context.design.features.holes.flatMap((hole, index) =>
      hole.plated === false ? [] : [checkHole(context, hole, index)],
    ),
})

function checkHole(context: EvaluationContext, hole: Hole, index: number): Outcome {
  const places = [placeOf('hole', hole)]
  const missing: MissingInput[] = []
  const need = (field: keyof Hole, label: string) => {
    if (hole[field] === null)
      missing.push({ path: ['features', 'holes', index, field], label: `${label} of ${hole.name}` })
  }
  if (hole.plated === null)
    missing.push({ path: ['features', 'holes', index, 'plated'], label: `whether ${hole.name} is plated` })
  need('zoneId', 'zone')
  need('fromLayerId', 'first layer')
  need('toLayerId', 'last layer')
  need('filling', 'filling')
  if (missing.length > 0 || hole.zoneId === null) return notComputedFrom(missing, places)
  const present = listConductorLayers(context.findZoneResult(hole.zoneId)).map(({ layerId }) => layerId)
  const ends = [hole.fromLayerId ?? '', hole.toLayerId ?? '']
  const absent = ends.filter((id) => !present.includes(id)).length
  const isOneLayer = ends[0] === ends[1]
  const laminations = countLeastLaminations(context.design, hole.zoneId)
  return decide({
    value: absent + (isOneLayer ? 1 : 0),
    limit: makeNoneAllowed('wrongHoleEndsCount', 'exactArithmetic'),
    places,
    what: `ends of ${hole.name} that join nothing`,
    equation: 'first and last layer against the copper of the zone',
    sourceKey: 'commonPractice',
    remark: isOneLayer
      ? 'First and last layer are the same.'
      : `Its zone takes at least ${laminations} lamination${laminations === 1 ? '' : 's'}; the fabricator says how many.`,
  })
}
