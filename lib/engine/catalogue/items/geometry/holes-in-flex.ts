import type { EvaluationContext } from '../../../context'
import { callByName, type Zone } from '../../../design'
import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
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
  limits: ['holeToBendMm'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.holes.*.zoneId',
    'features.holes.*.plated',
    'features.holes.*.nearestBend',
    'features.holes.*.clearOfBends',
    'plan',
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
        `use of ${callByName('bend', unstated.name)}`,
        places,
        'typed',
      )
    }
    if (readListState('bends', context) !== 'none') return judgeInStandingFilm(context, hole, index, zone)
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

/** In film that stands a hole may lie, clear of the bend, for a reason that somebody stands by. */
function judgeInStandingFilm(
  context: EvaluationContext,
  hole: EvaluationContext['design']['features']['holes'][number],
  index: number,
  zone: Zone,
): Outcome {
  const places = [placeOf('hole', hole), placeOf('zone', zone)]
  const limit = context.getLimit('holeToBendMm')
  const bendsHere = context.design.bends.filter(({ zoneId }) => zoneId === zone.id)
  const distanceMm = hole.nearestBend?.distanceMm ?? null
  const isClear = hole.clearOfBends === true || (distanceMm !== null && distanceMm >= limit.value)
  if (bendsHere.length > 0 && hole.clearOfBends !== true && distanceMm === null) {
    const path = ['features', 'holes', index, 'nearestBend']
    return notComputed(path, `distance of ${hole.name} from the nearest bend`, places, 'typed')
  }
  if (bendsHere.length > 0 && !isClear) {
    return cannotTell(
      `the plated hole ${hole.name} in flex ${callByName('zone', zone.name)}`,
      {
        because: `it lies ${inSentence(distanceMm ?? 0, 'mm')} from a bend that stands, less than ${inSentence(limit.value, 'mm')}`,
        decidedBy: 'move it to a rigid or stiffened zone, or name the reason in a waiver',
      },
      places,
    )
  }
  return {
    kind: 'said',
    verdict: 'meets',
    rests: 'stated',
    sourceKey: 'commonPractice',
    places,
    summary: `${hole.name} lies in flex ${callByName('zone', zone.name)}, which stands still, ${distanceMm === null ? 'clear of every bend' : `${inSentence(distanceMm, 'mm')} from the nearest bend`}. Say why it is not on a board or over a stiffener.`,
  }
}
