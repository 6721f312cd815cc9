import type { Design } from '@/lib/engine'
import type { DrawingGap } from './drawing-gap'

type Plan = NonNullable<Design['plan']>

/** What cannot be placed from the drawing: of each kind one question, that names what is not drawn. */
export function findPlanGaps(design: Design): DrawingGap[] {
  const { plan } = design
  const ask = (severity: DrawingGap['severity'], question: string, ...path: string[]): DrawingGap => ({
    severity,
    question,
    path: ['plan', ...path],
    target: { tab: 'plan', id: '' },
  })
  if (plan === null || plan.outline === null) {
    return [ask('major', 'Where on the part do bends, holes and stiffeners lie? Nothing is drawn in plan.')]
  }
  const undrawn = listUndrawn(design, plan)
  return [
    ...undrawn.map(({ list, words, names }) =>
      ask(
        'major',
        `Where on the part are the features that the plan does not show: ${words} ${names.join(', ')}?`,
        list,
      ),
    ),
    ...(plan.datums.length === 0 ? [ask('major', 'From which datums is the part measured?', 'datums')] : []),
    ...(plan.rollingDirectionDeg === null
      ? [ask('major', 'In which direction is the foil rolled?', 'rollingDirectionDeg')]
      : []),
    ...(plan.dimensions.some((each) => !each.isReference && (each.plusMm === null || each.minusMm === null)) &&
    design.brief.tolerances.outlineMm === null
      ? [ask('minor', 'Which tolerance applies to dimensions that state none?', 'dimensions')]
      : []),
    ...(design.brief.panelForm === 'assembly-arrays' && plan.array === null
      ? [ask('minor', 'How do the parts lie in their array, and where are its tabs and fiducials?', 'array')]
      : []),
  ]
}

function listUndrawn({ bends, features }: Design, plan: Plan) {
  const missing = (
    list: keyof Plan & string,
    words: string,
    entries: readonly { readonly id: string; readonly name: string }[],
    drawn: readonly string[],
  ) => {
    const names = entries.filter(({ id }) => !drawn.includes(id)).map(({ name }) => name)
    return names.length === 0 ? [] : [{ list, words, names }]
  }
  return [
    ...missing(
      'bendLines',
      'the axes of',
      bends,
      plan.bendLines.map(({ bendId }) => bendId),
    ),
    ...missing(
      'holes',
      'the holes',
      features.holes,
      plan.holes.map(({ holeId }) => holeId),
    ),
    ...missing(
      'stiffeners',
      'the stiffeners',
      features.stiffeners,
      plan.stiffeners.map(({ stiffenerId }) => stiffenerId),
    ),
    ...missing(
      'coverlayOpenings',
      'the coverlay openings',
      features.coverlayOpenings,
      plan.coverlayOpenings.map(({ openingId }) => openingId),
    ),
    ...missing(
      'components',
      'the components',
      features.components,
      plan.components.map(({ componentId }) => componentId),
    ),
    ...missing(
      'connectorEnds',
      'the contact ends',
      features.connectors,
      plan.connectorEnds.map(({ connectorId }) => connectorId),
    ),
  ]
}
