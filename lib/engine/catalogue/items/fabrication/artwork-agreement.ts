import { DESIGN_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const artworkAgreement = defineItem({
  id: 'artwork-agreement',
  section: 'fabrication',
  severity: 'blocking',
  question: 'Do drawing, artwork and construction agree?',
  titles: { meets: 'Artwork and construction agree', fails: 'Artwork and construction differ' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['artwork', 'construction.layers', 'construction.layers.*.name', 'construction.zones'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'facts.artworkDifferences', worse: 'larger' }],
  check: ({ facts }) => {
    if ((facts.artworkFileCount ?? 0) === 0) {
      return [notComputed(['facts', 'artworkFileCount'], 'artwork', [DESIGN_PLACE])]
    }
    const { artworkDifferences = null } = facts
    return [
      artworkDifferences === null
        ? notComputed(['facts', 'artworkDifferences'], 'comparison of artwork and design', [DESIGN_PLACE])
        : decide({
            value: artworkDifferences,
            limit: makeNoneAllowed('artworkDifferencesCount', 'commonPractice'),
            places: [DESIGN_PLACE],
            what: 'differences between artwork and design',
            equation: 'count of differences',
            // No count of differences sees everything that artwork says: somebody stands by what was compared.
            isStated: true,
          }),
    ]
  },
  judgment: {
    evidence: 'Who compared which files with which revision of the construction, and when.',
    replacesMissing: true,
    isStatement: true,
  },
})
