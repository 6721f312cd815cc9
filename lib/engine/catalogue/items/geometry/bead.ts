import type { Outcome } from '../../../results'
import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkGiven } from '../../given'

export const bead = defineItem({
  id: 'bead',
  section: 'geometry',
  severity: 'minor',
  question: 'Is the bead along each rigid edge called out with material, width and height, or ruled out?',
  titles: { meets: 'Beads are called out or ruled out', fails: 'A bead is called out too narrow or too wide' },
  appliesTo: { needs: ['transitions'], says: 'designs with a rigid or stiffened zone beside a flex zone' },
  limits: ['beadWidthLeastMm', 'beadWidthMostMm'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.rigidEdges.bead',
    'features.rigidEdges.beadMaterial',
    'features.rigidEdges.beadWidthMm',
    'features.rigidEdges.beadHeightMm',
    'construction.zones.*.kind',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context): Outcome[] => {
    const { rigidEdges } = context.design.features
    const places = [DESIGN_PLACE]
    if (rigidEdges.bead === null) {
      return [
        notComputed(['features', 'rigidEdges', 'bead'], 'whether a bead is called out or ruled out', places, 'typed'),
      ]
    }
    if (rigidEdges.bead === 'ruled-out') {
      return [
        {
          kind: 'said',
          verdict: 'meets',
          rests: 'typed',
          sourceKey: 'commonPractice',
          places,
          summary: 'A bead is ruled out.',
        },
      ]
    }
    const term = (field: 'beadMaterial' | 'beadWidthMm' | 'beadHeightMm', label: string) => ({
      path: ['features', 'rigidEdges', field],
      label,
      value: rigidEdges[field],
    })
    const given = checkGiven({
      terms: [
        term('beadMaterial', 'material of the bead'),
        term('beadWidthMm', 'width of the bead'),
        term('beadHeightMm', 'height of the bead'),
      ],
      places,
      whenGiven: 'The bead has its material, width and height.',
      sourceKey: 'commonPractice',
    })
    const { beadWidthMm } = rigidEdges
    if (beadWidthMm === null) return [given]
    const width = { value: beadWidthMm, places, what: 'width of the bead', equation: 'as typed', isTyped: true }
    return [
      given,
      decide({ ...width, limit: context.getLimit('beadWidthLeastMm') }),
      decide({ ...width, limit: context.getLimit('beadWidthMostMm') }),
    ]
  },
})
