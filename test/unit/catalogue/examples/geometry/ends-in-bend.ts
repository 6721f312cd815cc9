import type { ItemExample } from '../item-example'

/** Without artwork that was laid over the plan somebody has to look; what is measured is tested with drawn sets in `test/unit/artwork/measured-items.test.ts`. */
export const endsInBendExamples: readonly ItemExample[] = [
  { name: 'no artwork yet', expect: 'needs-judgment' },
  {
    name: 'artwork that nobody laid over the plan',
    facts: { artworkFileCount: 3, artwork: null },
    expect: 'needs-judgment',
  },
]
