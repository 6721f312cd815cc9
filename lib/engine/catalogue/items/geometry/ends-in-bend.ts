import { DESIGN_PLACE } from '../../checks'
import { notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { findArtworkInView, interruptions } from '../../measured'

export const endsInBend = defineItem({
  id: 'ends-in-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Do conductors run through each bend without an end, a junction or a pad in it?',
  titles: { meets: 'Conductors run through the bends', fails: 'A conductor ends, branches or has a pad in a bend' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['artwork', 'plan', 'bends', 'construction.layers', 'construction.zones'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [],
  check: (context) => {
    const { artworkFileCount = 0, artwork = null, onPlan = null } = context.facts
    const missing = (field: string, label: string) => [notComputed(['facts', field], label, [DESIGN_PLACE])]
    if (artworkFileCount === 0) return missing('artworkFileCount', 'artwork')
    if (artwork === null || onPlan === null) return missing('onPlan', 'the artwork laid over the plan')
    const view = findArtworkInView(context)
    if (view === null || view.bands.length === 0) {
      return missing('onPlan', onPlan.unplacedReason ?? 'a measurement of the bends as they are now')
    }
    const found = interruptions(context, view)
    // What was not measured may hold what the rest does not.
    return view.areBandsWhole ? found : [...found, ...missing('onPlan', 'a measurement of every layer in every bend')]
  },
  judgment: {
    evidence: 'Who looked at which layers at each bend, and what lies there.',
    replacesMissing: true,
    isStatement: true,
  },
})
