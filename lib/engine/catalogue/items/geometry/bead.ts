import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { DESIGN_PLACE, isDynamic, listBends, notComputedUse } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkGiven } from '../../given'
import { movesNearEdge } from '../../needs'

const COMMON = {
  section: 'geometry',
  titles: { meets: 'Beads are called out or ruled out', fails: 'A bead is called out too narrow or too wide' },
  limits: ['beadWidthLeastMm', 'beadWidthMostMm'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'plan',
    'features.rigidEdges.bead',
    'features.rigidEdges.beadMaterial',
    'features.rigidEdges.beadWidthMm',
    'features.rigidEdges.beadHeightMm',
    'construction.zones.*.kind',
    'bends.*.use',
    'bends.*.distanceToRigidMm',
    'bends.*.insideRadiusMm',
    'bends.*.angleDeg',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
} as const

export const bead = defineItem({
  ...COMMON,
  id: 'bead',
  severity: 'minor',
  question: 'Is the bead along each rigid edge called out with material, width and height, or ruled out?',
  appliesTo: {
    needs: ['transitions', 'still-edges'],
    says: 'designs with a rigid or stiffened zone beside a flex zone, and no moving bend near that edge',
  },
  check,
})

/** Where film moves beside an edge, the bead is what keeps it from cracking there. */
export const beadBesideMovingBend = defineItem({
  ...COMMON,
  id: 'bead-beside-moving-bend',
  severity: 'major',
  question:
    'Is the bead along each rigid edge beside a moving bend called out with material, width and height, or ruled out?',
  appliesTo: {
    needs: ['transitions', 'moving-edges'],
    says: 'bends that move near the edge of a rigid or stiffened zone',
  },
  check: (context) => [...whileMotionIsOpen(context), ...check(context)],
})

/** Where no bend is known to move near an edge, and one may: what is not known of it is asked. */
function whileMotionIsOpen(context: EvaluationContext): Outcome[] {
  const near = listBends(context, movesNearEdge)
  if (near.some(({ bend }) => isDynamic(bend) && bend.distanceToRigidMm !== null)) return []
  return near.map((checked) =>
    checked.bend.use === null
      ? notComputedUse(checked)
      : notComputed(
          ['bends', checked.index, 'distanceToRigidMm'],
          `distance of ${callByName('bend', checked.bend.name)} from a rigid edge`,
          [checked.place],
          'typed',
        ),
  )
}

function check(context: EvaluationContext): Outcome[] {
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
}
