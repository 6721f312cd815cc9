import type { EvaluationContext } from '../../../context'
import type { MissingInput, Outcome, ZoneResult } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeSourceLimit, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { hasCopper } from '../../needs'

export const componentSupport = defineItem({
  id: 'component-support',
  section: 'geometry',
  severity: 'major',
  question: 'Does every component stand on a rigid board, or over a stiffener on the other face?',
  titles: { meets: 'Components are supported', fails: 'A component stands on film alone' },
  appliesTo: { needs: ['components'], says: 'designs that list components' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['features.components', 'construction.zones', 'construction.layers'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.components[].overStiffener', worse: 'no' }],
  check: (context) =>
    context.design.features.components.map((component, index) => checkComponent(context, component, index)),
})

function checkComponent(
  context: EvaluationContext,
  component: EvaluationContext['design']['features']['components'][number],
  index: number,
): Outcome {
  const places = [placeOf('component', component)]
  const ask = (field: keyof typeof component, label: string): MissingInput => ({
    path: ['features', 'components', index, field],
    label: `${label} ${component.name}`,
  })
  const zone = context.design.construction.zones.find(({ id }) => id === component.zoneId)
  const result = zone === undefined ? null : context.findZoneResult(zone.id)
  if (zone === undefined || result === null) {
    return { ...notComputedFrom([ask('zoneId', 'zone of')], places), rests: 'typed' }
  }
  const decideFor = (supports: number, remark: string) =>
    decide({
      value: supports,
      limit: makeSourceLimit({
        key: 'componentSupportsCount',
        value: 1,
        unit: 'count',
        sense: 'at-least',
        sourceKey: 'commonPractice',
      }),
      places: [...places, placeOf('zone', zone)],
      what: `boards and stiffeners under ${component.name}`,
      equation: 'layers of the zone, and the face on which the component stands',
      isTyped: true,
      remark,
    })
  const hasBoard = result.layers.some(({ kind }) => kind === 'rigid-laminate')
  if (hasBoard) return decideFor(1, `${zone.name} is a rigid board.`)
  const faces = listStiffenedFaces(result)
  if (faces.size === 0) return decideFor(0, `${zone.name} has neither laminate nor stiffener.`)
  if (component.overStiffener === false) return decideFor(0, 'The stiffener of the zone does not reach under it.')
  if (component.side === null) return { ...notComputedFrom([ask('side', 'side of')], places), rests: 'typed' }
  const other = component.side === 'top' ? 'bottom' : 'top'
  return faces.has(other)
    ? decideFor(1, `The stiffener of ${zone.name} lies on the ${other} face.`)
    : decideFor(0, `The stiffener of ${zone.name} lies on the ${component.side} face, as the component does.`)
}

/** Faces of a zone that carry a stiffener: above all copper, or below it. */
function listStiffenedFaces({ layers }: ZoneResult): ReadonlySet<'top' | 'bottom'> {
  const first = layers.findIndex(hasCopper)
  const last = layers.findLastIndex(hasCopper)
  return new Set(
    layers.flatMap(({ kind }, at) =>
      kind !== 'stiffener' ? [] : at < first ? ['top' as const] : at > last ? ['bottom' as const] : [],
    ),
  )
}
