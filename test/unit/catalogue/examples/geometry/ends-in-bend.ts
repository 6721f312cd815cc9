import type { OnPlanFacts } from '@/lib/artwork'
import { groundOf } from '@/lib/engine/artwork-check'
import { makeCopper, makeFacts } from '../../../artwork/fact-factory'
import { drawPlan } from '../../drawn-plan'
import { makeExampleDesign } from '../../example-design'
import type { ItemExample } from '../item-example'

const COPPER = { areaMm2: 1, islandCount: 1, narrowest: null, leastSpace: null, leastRing: null, etching: null }
const NONE = { count: 0, firstAtMm: null }

/** Artwork laid over the drawn example, with as many ends in each bend on the first layer. */
function withEnds(count: number) {
  const design = makeExampleDesign()
  drawPlan(design)
  const ground = groundOf(design)
  if (ground === null) throw new Error('the drawn example has no plan')
  const files = makeCopper(design.construction.layers.filter(({ kind }) => kind === 'conductor').length).map(
    (file) => ({
      ...file,
      copper: COPPER,
    }),
  )
  const onPlan: OnPlanFacts = {
    version: '1',
    planBasis: ground.basis,
    unplacedReason: null,
    unorderedReason: null,
    registration: {
      isMirrored: false,
      turnDeg: 0,
      shiftMm: [0, 0],
      fitFraction: 1,
      isUnique: true,
      farthestMm: 0,
      farthestAtMm: [0, 0],
    },
    layers: [],
    holes: [],
    bands: ground.bands.map(({ lineId, bendId, basis }) => ({
      lineId,
      bendId,
      basis,
      holes: { ...NONE, platedCount: 0 },
      nearestHole: null,
      stacked: [],
      layers: files.map(({ name }, at) => ({
        fileName: name,
        copperFraction: 0.3,
        pieceCount: 4,
        narrowest: null,
        leastAngle: null,
        largestTurn: null,
        turnCount: 0,
        widthChange: null,
        widthChangeCount: 0,
        ends: at === 0 && count > 0 ? { count, firstAtMm: [1, 1] as [number, number] } : NONE,
        junctions: NONE,
        pads: NONE,
        leastSpace: null,
        hatch: null,
        solid: null,
      })),
    })),
    platedHoleToOutline: null,
    transitions: null,
    covers: [],
    stiffeners: [],
  }
  return { artworkFileCount: files.length, artwork: makeFacts(files), onPlan }
}

export const endsInBendExamples: readonly ItemExample[] = [
  { name: 'conductors that run through', change: drawPlan, facts: withEnds(0), expect: 'meets' },
  { name: 'a conductor that ends in each bend', change: drawPlan, facts: withEnds(1), expect: 'fails' },
  { name: 'no artwork yet', expect: 'needs-judgment' },
]
