import type { EvaluationContext } from '../../../context'
import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { cannotTell, decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { findPlatedStack } from '../../plated-stack'

export const holeAspect = defineItem({
  id: 'hole-aspect',
  section: 'geometry',
  severity: 'major',
  question: 'Is each plated hole wide enough for its depth, so that it plates through?',
  titles: {
    meets: 'Plated holes are wide enough for their depth',
    fails: 'A plated hole is too narrow, or too deep for its diameter',
  },
  appliesTo: { needs: ['plated-holes'], says: 'designs with plated holes' },
  limits: ['holeAspectRatio', 'platedDrillMm'],
  sourceKeys: ['exactArithmetic'],
  restsOn: [...SECTION_INPUTS, 'features.holes'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.holes[].drillMm', worse: 'smaller' }],
  check: (context) =>
    context.design.features.holes.flatMap((hole, index) =>
      hole.plated === false ? [] : [checkHole(context, hole, index), ...checkDrill(context, hole)],
    ),
})

type Hole = EvaluationContext['design']['features']['holes'][number]

/** Which layers a hole joins is not part of the design: each is taken as drilled from the outermost copper to the outermost copper. */
function checkHole(context: EvaluationContext, hole: Hole, index: number): Outcome {
  const places = [placeOf('hole', hole)]
  const lacks = (field: 'plated' | 'drillMm' | 'zoneId', label: string) =>
    notComputed(['features', 'holes', index, field], label, places)
  if (hole.plated === null) return lacks('plated', `whether ${hole.name} is plated`)
  if (hole.drillMm === null) return lacks('drillMm', `drill of ${hole.name}`)
  const zone = hole.zoneId === null ? null : context.findZoneResult(hole.zoneId)
  if (zone === null) return lacks('zoneId', `zone of ${hole.name}`)
  const depthUm = findPlatedStack(zone)
  if (depthUm === null) {
    return cannotTell(
      `the depth of ${hole.name}`,
      {
        because: `${zone.name} has fewer than two layers of copper for a plated hole to join`,
        decidedBy: 'check the zone of the hole',
      },
      places,
    )
  }
  const drillUm = hole.drillMm * 1000
  return decide({
    value: depthUm.nominal / drillUm,
    range: { low: depthUm.low / drillUm, high: depthUm.high / drillUm },
    limit: context.getLimit('holeAspectRatio'),
    places: [...places, placeOf('zone', { id: zone.zoneId, name: zone.name })],
    what: `depth over drill of ${hole.name}`,
    equation: 'outermost copper to outermost copper / drill',
    remark: 'Taken as drilled through all copper of the zone; a hole that joins fewer layers is shallower.',
  })
}

/** Thin film has a shallow hole whatever the drill: a drill that nobody has is too small all the same. */
function checkDrill(context: EvaluationContext, hole: Hole): Outcome[] {
  if (hole.plated !== true || hole.drillMm === null) return []
  return [
    decide({
      value: hole.drillMm,
      limit: context.getLimit('platedDrillMm'),
      places: [placeOf('hole', hole)],
      what: `drill of ${hole.name}`,
      equation: 'drill as stated',
      isTyped: true,
    }),
  ]
}
