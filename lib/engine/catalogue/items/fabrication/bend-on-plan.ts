import { callByName } from '../../../design'
import type { Outcome, Place } from '../../../results'
import { type BendUnderCheck, listBends } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const bendOnPlan = defineItem({
  id: 'bend-on-plan',
  section: 'fabrication',
  severity: 'major',
  question: 'Is each bend drawn with its line, across the zone that it bends, from edge to edge?',
  titles: { meets: 'Every bend is drawn', fails: 'A bend line does not cross the zone of its bend' },
  appliesTo: { needs: ['plan', 'bends'], says: 'bends of parts that are drawn in plan' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['plan', 'bends.*.zoneId'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [],
  check: (context) =>
    listBends(context).flatMap((checked): Outcome[] => {
      const { bend, place } = checked
      const lines = context.drawing.measures?.bands.filter(({ bendId }) => bendId === bend.id) ?? []
      if (lines.length === 0)
        return [notComputed(['plan', 'bendLines'], `line of ${callByName('bend', bend.name)} in plan`, [place])]
      return lines.map((line) => {
        const faults = [
          ...(line.area === null ? ['its middle lies in no area of the part'] : []),
          ...(line.area !== null && !line.isInOwnZone ? ['it lies outside of the zone of its bend'] : []),
          ...(line.area !== null && !line.reachesEdges ? ['it does not run from edge to edge'] : []),
          ...(line.isOverBorder ? ['it runs over a border into another area'] : []),
        ]
        return judge(checked, faults, [place])
      })
    }),
})

function judge({ bend }: BendUnderCheck, faults: readonly string[], places: readonly Place[]): Outcome {
  const outcome = decide({
    value: faults.length,
    limit: makeNoneAllowed('bendLineFaultsCount', 'commonPractice'),
    places,
    what: `faults of the line of ${callByName('bend', bend.name)}`,
    equation: 'drawn in plan',
  })
  return faults.length === 0
    ? outcome
    : { ...outcome, summary: `Line of ${callByName('bend', bend.name)}: ${faults.join('; ')}.` }
}
