import type { EvaluationContext } from '../../../context'
import type { Outcome } from '../../../results'
import { checkObserved, placeOf } from '../../checks'
import { findCornerLimit } from '../../corner-limits'
import { notApplicable, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'

export const tearStop = defineItem({
  id: 'tear-stop',
  section: 'geometry',
  severity: 'minor',
  question:
    'Is there a tear stop where film starts to tear: at corners below their limit, at ends of slits without relief, where an arm is pulled?',
  titles: { meets: 'Tear stops are where film could tear', fails: 'A place that could tear has no tear stop' },
  appliesTo: { needs: ['flex-zones'], says: 'parts with a flex zone' },
  limits: [],
  sourceKeys: ['commonPractice', 'guideRigidFlex2012'],
  restsOn: ['features.outlineCorners', 'features.slits', 'features.none', 'construction.zones'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  // A stop taken away from a corner that needs none leaves nothing to judge.
  monotone: [],
  check: (context) => {
    const outcomes: Outcome[] = []
    for (const list of ['outlineCorners', 'slits'] as const) {
      const state = readListState(list, context)
      if (typeof state !== 'string') outcomes.push(notComputedFrom([state.missing], []))
    }
    return [...outcomes, ...checkCorners(context), ...checkSlits(context)]
  },
})

/** A corner that is round enough does not tear; one that is pulled may. */
function checkCorners(context: EvaluationContext): Outcome[] {
  return context.design.features.outlineCorners.map((corner, index) => {
    const places = [placeOf('corner', corner)]
    const lacks = (field: 'insideRadiusMm' | 'bordersFlex' | 'isPulled', label: string) =>
      notComputed(['features', 'outlineCorners', index, field], label, places)
    const asked = () =>
      checkObserved({
        observed: corner.tearStop,
        wanted: true,
        path: ['features', 'outlineCorners', index, 'tearStop'],
        label: `tear stop at ${corner.name}`,
        whenRight: `${corner.name} has a tear stop.`,
        whenWrong: `${corner.name} has no tear stop; copper along the corner costs nothing.`,
        places,
        sourceKey: 'commonPractice',
      })
    if (corner.isPulled === true) return asked()
    const limit = findCornerLimit(context, corner)
    const isRound = corner.insideRadiusMm !== null && limit !== null && corner.insideRadiusMm >= limit.value
    if (isRound && corner.isPulled === false) {
      return notApplicable(`${corner.name} is round enough and nothing pulls there`, places)
    }
    if (corner.insideRadiusMm === null) return lacks('insideRadiusMm', `inside radius of ${corner.name}`)
    if (limit === null) return lacks('bordersFlex', `whether ${corner.name} borders a flex zone`)
    // Too sharp, whether or not something pulls there.
    if (corner.insideRadiusMm < limit.value) return asked()
    return lacks('isPulled', `whether an arm is pulled at ${corner.name}`)
  })
}

/** A hole at the end of a slit stops a tear by itself. */
function checkSlits({ design, getLimit }: EvaluationContext): Outcome[] {
  const limit = getLimit('slitEndReliefDiameterMm')
  return design.features.slits.map((slit, index) => {
    const places = [placeOf('slit', slit)]
    if (slit.endReliefDiameterMm === null) {
      return notComputed(['features', 'slits', index, 'endReliefDiameterMm'], `end relief of ${slit.name}`, places)
    }
    if (slit.endReliefDiameterMm >= limit.value) {
      return notApplicable(`${slit.name} ends in a relief hole`, places)
    }
    return checkObserved({
      observed: slit.tearStop,
      wanted: true,
      path: ['features', 'slits', index, 'tearStop'],
      label: `tear stop at the end of ${slit.name}`,
      whenRight: `${slit.name} has a tear stop at its end.`,
      whenWrong: `${slit.name} ends without relief and without a tear stop.`,
      places,
      sourceKey: 'commonPractice',
    })
  })
}
