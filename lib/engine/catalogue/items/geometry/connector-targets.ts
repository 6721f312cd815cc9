import type { EvaluationContext } from '../../../context'
import {
  describeLoopSlack,
  type FoldableDesign,
  measureLoopSlack,
  missTarget,
  placeConnectorEnd,
} from '../../../folding'
import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { cannotTell, decide, makeDesignLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { onFolded } from '../../folding-ground'
import { BEND_PLACE_INPUTS, SECTION_INPUTS } from '../../item-inputs'

export const connectorTargets = defineItem({
  id: 'connector-targets',
  section: 'geometry',
  severity: 'major',
  question: 'Once the part is folded, is each contact end at its connector, and does it point the right way?',
  titles: {
    meets: 'Contact ends meet their connectors when folded',
    fails: 'A contact end misses its connector when folded',
    'thin-margin': 'Contact ends reach their connectors at nominal, not over the tolerances',
  },
  appliesTo: { needs: ['bends', 'bend-lines', 'drawn-ends'], says: 'plans with bends and a contact end' },
  limits: [],
  sourceKeys: ['exactArithmetic'],
  restsOn: [
    'plan',
    ...SECTION_INPUTS,
    ...BEND_PLACE_INPUTS,
    'bends.*.insideFace',
    'bends.*.use',
    'bends.*.leafLengths',
    'bends.*.leafStepMm',
    'bends.*.radiusToleranceMm',
    'brief.tolerances.bendPositionMm',
    'brief.tolerances.outlineMm',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [
    { path: 'plan.connectorEnds[].target.withinMm', worse: 'smaller' },
    { path: 'plan.connectorEnds[].target.withinDeg', worse: 'smaller' },
  ],
  check: (context) => {
    const ends = context.design.plan?.connectorEnds ?? []
    const open = ends.flatMap((end, index) => (end.target === null ? [listOpen(context, index)] : []))
    if (open.length === ends.length) return open
    return [
      ...onFolded(context, 'positions of contact ends when folded', (folding) =>
        ends.flatMap((end, index) => (end.target === null ? [] : judgeEnd(context, folding, index))),
      ),
      ...open,
    ]
  },
})

function nameEnd({ design }: EvaluationContext, index: number) {
  const end = design.plan?.connectorEnds[index]
  const connector = design.features.connectors.find(({ id }) => id === end?.connectorId)
  const name = connector?.name ?? end?.connectorId ?? ''
  return { name, places: connector === undefined ? [] : [placeOf('connector', connector)] }
}

function listOpen(context: EvaluationContext, index: number): Outcome {
  const { name, places } = nameEnd(context, index)
  return notComputed(
    ['plan', 'connectorEnds', index, 'target'],
    `required position of ${name} when folded`,
    places,
    'typed',
  )
}

function judgeEnd(context: EvaluationContext, folding: FoldableDesign, index: number): Outcome[] {
  const { design } = context
  const drawn = design.plan?.connectorEnds[index]
  const { name, places } = nameEnd(context, index)
  if (drawn === undefined || drawn.target === null) return []
  const { target } = drawn
  const end = placeConnectorEnd(design, folding, drawn)
  if (end.kind === 'in-bend') {
    return [
      cannotTell(
        `position of ${name} when folded`,
        {
          because: 'its edge is no edge of an area that stays plane',
          decidedBy: 'draw it on the edge of the part, clear of bends',
        },
        places,
      ),
    ]
  }
  const { offsetMm, offsetRangeMm, slackMm, turnDeg } = missTarget(end, target)
  const lacks = (field: 'withinMm' | 'withinDeg', what: string) =>
    notComputed(['plan', 'connectorEnds', index, 'target', field], what, places, 'typed')
  const limitOf = (unit: 'mm' | 'deg', value: number) =>
    makeDesignLimit({
      key: unit === 'mm' ? 'endOffsetMm' : 'endTurnDeg',
      value,
      unit,
      sense: 'at-most',
      sourceKey: 'exactArithmetic',
      name: `target of ${name}`,
    })
  const loop = measureLoopSlack(design, end, target)
  return [
    ...(loop === null
      ? []
      : [
          decide({
            value: loop.slackMm,
            range: loop.slackRangeMm,
            rangeOver: 'tolerances',
            limit: makeDesignLimit({
              key: 'loopSlackMm',
              // An end that may be off its target may fall short of it by as much. The film's length is that of its neutral surface, which is not at the height of the end's middle.
              value: -Math.max(target.withinMm ?? 0, NO_SLACK_MM),
              unit: 'mm',
              sense: 'at-least',
              sourceKey: 'exactArithmetic',
              name: `target of ${name}`,
            }),
            places,
            what: `slack of the film to ${name}`,
            equation: 'length along the neutral surface, less the straight way from the area that stays to the target',
            summary: `${name}: ${describeLoopSlack(loop)}`,
          }),
        ]),
    target.withinMm === null
      ? lacks('withinMm', `how far ${name} may be off its target`)
      : decide({
          value: offsetMm,
          range: offsetRangeMm,
          rangeOver: 'tolerances',
          limit: limitOf('mm', target.withinMm),
          places,
          what: `distance of ${name} from its target, folded`,
          equation:
            'plan folded with true radii; tolerances of radii, places of bends and profile added in their worst directions',
          remark: describeSlack(slackMm),
        }),
    target.withinDeg === null
      ? lacks('withinDeg', `how far ${name} may be turned off its target`)
      : decide({
          value: turnDeg,
          limit: limitOf('deg', target.withinDeg),
          places,
          what: `turn of ${name} off its target, folded`,
          equation:
            'angle between the directions in which end and target point, and between their top faces where stated',
        }),
  ]
}

/** Below this nothing of the trade could tell. */
const NO_SLACK_MM = 0.01

function describeSlack(slackMm: number): string {
  if (Math.abs(slackMm) < NO_SLACK_MM) return 'Along its direction its length is right.'
  return slackMm > 0
    ? `Along its direction it reaches ${inSentence(slackMm, 'mm')} too far: slack that the film has to take up.`
    : `Along its direction it comes ${inSentence(-slackMm, 'mm')} short: the film would be pulled.`
}
