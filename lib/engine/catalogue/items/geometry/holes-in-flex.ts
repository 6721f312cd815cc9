import type { EvaluationContext } from '../../../context'
import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { cannotTell, decide, makeNoneAllowed, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'

export const holesInFlex = defineItem({
  id: 'holes-in-flex',
  section: 'geometry',
  severity: 'major',
  question: 'Are plated holes kept out of flex zones, and wholly out of moving ones?',
  titles: { meets: 'Plated holes lie outside flex zones', fails: 'A plated hole lies in a zone that moves' },
  appliesTo: { needs: ['flex-zones', 'plated-holes'], says: 'designs with a flex zone and plated holes' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.holes.*.zoneId',
    'features.holes.*.plated',
    'construction.zones.*.kind',
    'bends.*.zoneId',
    'bends.*.use',
    'features.none',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) => context.design.features.holes.map((hole, index) => checkHole(context, hole, index)),
})

function checkHole(
  context: EvaluationContext,
  hole: EvaluationContext['design']['features']['holes'][number],
  index: number,
): Outcome {
  const { design } = context
  const places = [placeOf('hole', hole)]
  if (hole.plated === false) return notApplicable(`${hole.name} is not plated`, places)
  const zone = design.construction.zones.find(({ id }) => id === hole.zoneId)
  if (zone === undefined) {
    return notComputed(['features', 'holes', index, 'zoneId'], `zone of ${hole.name}`, places, 'typed')
  }
  const isFlex = zone.kind === 'flex'
  if (isFlex && hole.plated === null) {
    return notComputed(['features', 'holes', index, 'plated'], `whether ${hole.name} is plated`, places, 'typed')
  }
  const bends = isFlex ? design.bends.filter(({ zoneId }) => zoneId === zone.id) : []
  const moves = bends.some(({ use }) => use === 'dynamic')
  if (isFlex && !moves) {
    const unstated = bends.find(({ use }) => use === null)
    if (unstated !== undefined) {
      return notComputed(
        ['bends', design.bends.indexOf(unstated), 'use'],
        `use of bend ${unstated.name}`,
        places,
        'typed',
      )
    }
    if (readListState('bends', context) !== 'none') {
      return cannotTell(
        `the plated hole ${hole.name} in flex zone ${zone.name}`,
        {
          because:
            'where in the zone it lies is not known, and nothing published says when a plated hole in film that stands is safe',
          decidedBy: 'move it to a rigid or stiffened zone, or name the reason in a waiver',
        },
        places,
      )
    }
  }
  return decide({
    value: moves ? 1 : 0,
    limit: makeNoneAllowed('platedHolesInMovingZonesCount', 'commonPractice'),
    places: [...places, placeOf('zone', zone)],
    what: `plated holes of ${hole.name} in film that moves`,
    equation: 'zone of the hole and bends of that zone',
    isTyped: true,
    remark: `Zone: ${zone.name}.`,
  })
}
