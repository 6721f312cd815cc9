import { BRIEF_PLACE } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated } from '../../terms'

export const bowAndTwist = defineItem({
  id: 'bow-and-twist',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is flatness of rigid and stiffened areas stated, and close enough for the parts on them?',
  titles: { meets: 'Bow and twist are limited', fails: 'The limit of bow and twist is too wide' },
  appliesTo: { needs: ['flat-areas'], says: 'designs with a rigid or stiffened zone' },
  limits: ['bowAndTwistPct', 'bowAndTwistSurfaceMountPct'],
  sourceKeys: [],
  restsOn: ['brief.acceptance.bowAndTwistPct', 'brief.acceptance.hasSurfaceMountParts', 'construction.zones.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'brief.acceptance.bowAndTwistPct', worse: 'larger' },
    { path: 'brief.acceptance.hasSurfaceMountParts', worse: 'yes' },
  ],
  check: (context) => {
    const { bowAndTwistPct, hasSurfaceMountParts } = context.design.brief.acceptance
    if (bowAndTwistPct === null) return askFor(findUnstated(context, 'acceptance', ['bowAndTwistPct']))
    const compare = (key: 'bowAndTwistPct' | 'bowAndTwistSurfaceMountPct') =>
      decide({
        value: bowAndTwistPct,
        limit: context.getLimit(key),
        places: [BRIEF_PLACE],
        what: 'bow and twist as stated',
        equation: 'as stated, over length or diagonal',
        isTyped: true,
      })
    const [always, surfaceMount] = [compare('bowAndTwistPct'), compare('bowAndTwistSurfaceMountPct')]
    if (always.verdict === 'fails') return [always]
    // Without a word on the parts only what is flat enough for any of them is certain.
    if (surfaceMount.verdict === 'meets') return [surfaceMount]
    if (hasSurfaceMountParts === null) return askFor(findUnstated(context, 'acceptance', ['hasSurfaceMountParts']))
    return [hasSurfaceMountParts ? surfaceMount : always]
  },
})
