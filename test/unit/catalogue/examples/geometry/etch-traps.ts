import type { ArtworkFileFacts } from '@/lib/artwork'
import { makeCopper, makeFacts } from '../../../artwork/fact-factory'
import { makeExampleDesign } from '../../example-design'
import type { ItemExample } from '../item-example'

type Etching = NonNullable<NonNullable<ArtworkFileFacts['copper']>['etching']>

const EVEN: Etching = {
  leastCopper: { mm: 0.2, atMm: [1, 1] },
  leastSlot: null,
  sharpestTip: null,
  // 45° within what it is measured to.
  sharpestGap: { deg: 43, atMm: [2, 2] },
}

/** Artwork of the example whose first layer has these places. */
function withFirst(etching: Etching | null) {
  const count = makeExampleDesign().construction.layers.filter(({ kind }) => kind === 'conductor').length
  const files = makeCopper(count).map((file, at) => ({
    ...file,
    copper: {
      areaMm2: 1,
      islandCount: 1,
      narrowest: null,
      leastSpace: null,
      leastRing: null,
      etching: at === 0 ? etching : EVEN,
    },
  }))
  return { artworkFileCount: files.length, artwork: makeFacts(files), onPlan: null }
}

export const etchTrapsExamples: readonly ItemExample[] = [
  { name: 'wide copper, corners of 45°', facts: withFirst(EVEN), expect: 'meets' },
  {
    name: 'a sliver of 0.02 mm',
    facts: withFirst({ ...EVEN, leastCopper: { mm: 0.02, atMm: [1, 1] } }),
    expect: 'fails',
  },
  { name: 'a slit of 0.02 mm', facts: withFirst({ ...EVEN, leastSlot: { mm: 0.02, atMm: [1, 1] } }), expect: 'fails' },
  { name: 'a point of 20°', facts: withFirst({ ...EVEN, sharpestTip: { deg: 20, atMm: [1, 1] } }), expect: 'fails' },
  { name: 'a wedge of 30°', facts: withFirst({ ...EVEN, sharpestGap: { deg: 30, atMm: [1, 1] } }), expect: 'fails' },
  { name: 'a layer that was too much to measure', facts: withFirst(null), expect: 'needs-judgment' },
  { name: 'no artwork yet', expect: 'needs-judgment' },
]
