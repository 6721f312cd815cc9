import type { Limit } from '../../../results'
import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { sourceOf } from '../../drawn'

export const copperToOutline = defineItem({
  id: 'copper-to-outline',
  section: 'geometry',
  severity: 'major',
  question: 'Does copper keep its distance from the outline?',
  titles: { meets: 'Copper keeps clear of the outline', fails: 'Copper comes too near the outline' },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: ['copperToOutlineMm', 'copperToFineOutlineMm'],
  sourceKeys: [],
  restsOn: ['artwork', 'plan', 'features.copperToOutlineMm', 'features.outlineCutBy'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.copperToOutlineMm', worse: 'smaller' }],
  check: (context) => {
    const { copperToOutlineMm, outlineCutBy } = context.design.features
    if (copperToOutlineMm === null) {
      // Routes alone say how near copper comes at least: too near is certain, far enough is not.
      const routeMm = context.drawing.measures?.routes.copperToOutlineMm ?? null
      const limits = [context.getLimit('copperToFineOutlineMm'), context.getLimit('copperToOutlineMm')]
      const least = limits.reduce((a, b) => (b.value < a.value ? b : a))
      if (routeMm !== null && routeMm < least.value) {
        return [
          decide({
            value: routeMm,
            limit: least,
            places: [DESIGN_PLACE],
            what: 'conductor routes to outline',
            equation: 'drawn in plan',
          }),
        ]
      }
      return [notComputed(['features', 'copperToOutlineMm'], 'distance of copper from the outline', [DESIGN_PLACE])]
    }
    const decideBy = (limit: Limit) =>
      decide({
        value: copperToOutlineMm,
        limit,
        places: [DESIGN_PLACE],
        what: 'copper to outline',
        ...sourceOf(context, ['features', 'copperToOutlineMm'], 'smallest distance, by how the outline is cut'),
      })
    const [fine, coarse] = [context.getLimit('copperToFineOutlineMm'), context.getLimit('copperToOutlineMm')]
    if (outlineCutBy !== null) return [decideBy(outlineCutBy === 'laser' || outlineCutBy === 'die' ? fine : coarse)]
    // Enough for any cut is enough, too little for any is too little.
    const [kind, strict] = fine.value <= coarse.value ? [fine, coarse] : [coarse, fine]
    if (copperToOutlineMm >= strict.value) return [decideBy(strict)]
    if (copperToOutlineMm < kind.value) return [decideBy(kind)]
    return [notComputed(['features', 'outlineCutBy'], 'how the outline is cut', [DESIGN_PLACE], 'typed')]
  },
})
