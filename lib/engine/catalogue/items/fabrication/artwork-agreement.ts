import { type ArtworkPair, compareArtwork, groundOfDrawing, type OpenFact } from '../../../artwork-check'
import type { Outcome } from '../../../results'
import { DESIGN_PLACE } from '../../checks'
import { cannotTell, decide, makeNoneAllowed, notComputed } from '../../decide'
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
  restsOn: [
    'artwork',
    'construction.layers',
    'construction.layers.*.name',
    'construction.zones',
    'features.holes',
    'features.outline',
    'features.none',
    'features.coverlayOpenings',
    'plan',
    'bends',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: ({ design, drawing, zones, facts }) => {
    if ((facts.artworkFileCount ?? 0) === 0) {
      return [notComputed(['facts', 'artworkFileCount'], 'artwork', [DESIGN_PLACE])]
    }
    const { artwork = null } = facts
    if (artwork === null) return [notComputed(['facts', 'artwork'], 'what the artwork files say', [DESIGN_PLACE])]
    const { pairs, open } = compareArtwork({
      design,
      drawnPart: drawing.measures?.part ?? null,
      zones,
      artwork,
      onPlan: facts.onPlan ?? null,
      ground: groundOfDrawing(drawing),
    })
    const differing = pairs.filter(({ agrees }) => !agrees)
    return [
      ...differing.map(contradict),
      ...open.map(leaveOpen),
      ...(differing.length === 0 ? [count(pairs.length)] : []),
    ]
  },
  judgment: {
    evidence: 'Who compared which files with which revision of the construction, and when.',
    replacesMissing: true,
    isStatement: true,
  },
})

function contradict({ fact, one, other, places, artworkAt }: ArtworkPair): Outcome {
  return decide({
    value: 1,
    limit: makeNoneAllowed('artworkDifferencesCount', 'commonPractice'),
    places,
    artworkAt,
    what: fact,
    equation: 'read from the files and compared',
    summary: `${fact}: ${one.says} in ${one.where}, ${other.says} in ${other.where}.`,
  })
}

const leaveOpen = ({ fact, because, decidedBy, places }: OpenFact): Outcome =>
  cannotTell(fact, { because, decidedBy }, places)

/** No comparison sees everything that artwork says: somebody stands by it. */
function count(comparedCount: number): Outcome {
  return decide({
    value: 0,
    limit: makeNoneAllowed('artworkDifferencesCount', 'commonPractice'),
    places: [DESIGN_PLACE],
    what: 'differences between artwork and design',
    equation: 'read from the files and compared',
    isStated: true,
    remark:
      comparedCount === 0
        ? 'Nothing could be compared.'
        : `${comparedCount === 1 ? 'One pair of statements was' : `${comparedCount} pairs of statements were`} compared; what layers say in words, and where copper runs, is for people to look at.`,
  })
}
