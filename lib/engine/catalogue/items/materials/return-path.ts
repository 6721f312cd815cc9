import type { EvaluationContext } from '../../../context'
import type { ConductorFeature } from '../../../design'
import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { IMPEDANCE_INPUTS } from '../../item-inputs'
import { listConductorLayers } from '../../needs'

export const returnPath = defineItem({
  id: 'return-path',
  section: 'materials',
  severity: 'major',
  question: 'Does the reference plane go on under each controlled conductor, across every bend and transition?',
  titles: { meets: 'Reference planes go on', fails: 'A reference plane ends under a controlled conductor' },
  appliesTo: { needs: ['controlled-impedance'], says: 'designs with a conductor whose impedance is stated' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [...IMPEDANCE_INPUTS, 'features.conductors.*.crossings', 'construction.zones', 'artwork'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    context.design.features.conductors.flatMap((conductor, index) =>
      conductor.impedanceOhm === null ? [] : [checkReference(context, conductor, index)],
    ),
  judgment: {
    evidence:
      'The artwork of the reference layer under each controlled conductor, at both ends of every flex zone: file and view.',
  },
})

/** The construction says in which zones the reference has copper; where in a zone it has a gap the artwork says alone. */
function checkReference(context: EvaluationContext, conductor: ConductorFeature, index: number): Outcome {
  const places = [placeOf('conductor', conductor)]
  const { referenceLayerId } = conductor.impedance
  if (referenceLayerId === null) {
    return notComputed(
      ['features', 'conductors', index, 'impedance', 'referenceLayerId'],
      `reference layer of ${conductor.name}`,
      places,
      'typed',
    )
  }
  const crossed = new Set(
    conductor.crossings.flatMap(({ bendId }) => context.design.bends.find(({ id }) => id === bendId)?.zoneId ?? []),
  )
  const gaps = [...crossed].flatMap((zoneId) => {
    const zone = context.findZoneResult(zoneId)
    return zone === null || listConductorLayers(zone).some(({ layerId }) => layerId === referenceLayerId) ? [] : [zone]
  })
  const limit = makeNoneAllowed('referenceGapsCount', 'commonPractice')
  if (gaps.length === 0 && conductor.impedance.referenceUnbroken === false) {
    return decide({
      value: 1,
      limit,
      places,
      what: `gaps of the plane under ${conductor.name}, at least`,
      equation: 'as stated with its impedance',
    })
  }
  return decide({
    value: gaps.length,
    limit,
    places: [...places, ...gaps.map(({ zoneId, name }) => placeOf('zone', { id: zoneId, name }))],
    what: `zones that ${conductor.name} crosses without its reference layer`,
    equation: 'layers with copper in each zone of a bend that it crosses',
    remark: gaps.length === 0 ? undefined : `Missing in: ${gaps.map(({ name }) => name).join(', ')}.`,
  })
}
