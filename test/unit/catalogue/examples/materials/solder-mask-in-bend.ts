import type { Design } from '@/lib/engine'
import { addLayersBelow, getFilm, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

const addMask = (design: Design, materialId = 'solder-mask-rigid') =>
  addLayersBelow(
    design,
    'prepreg-top',
    [{ ...getFilm(design, 'mask-top'), id: 'mask-arm', name: 'Mask on flex', materialId }],
    ['arm'],
  )
const fold = (design: Design, insideRadiusMm: number) => {
  makeBendsFolds(design)
  for (const bend of design.bends) Object.assign(bend, { insideRadiusMm, radiusToleranceMm: 0.3 })
}

export const solderMaskInBendExamples: readonly ItemExample[] = [
  { name: 'coverlay only', expect: 'meets' },
  { name: 'mask over the arm', change: (d) => addMask(d), expect: 'fails' },
  { name: 'flexible mask in a moving bend', change: (d) => addMask(d, 'solder-mask-flexible'), expect: 'fails' },
  {
    name: 'flexible mask in a wide fold',
    change: (d) => {
      addMask(d, 'solder-mask-flexible')
      fold(d, 12)
    },
    expect: 'meets',
  },
  {
    name: 'flexible mask in a fold that is wide at nominal alone',
    change: (d) => {
      addMask(d, 'solder-mask-flexible')
      fold(d, 10.1)
    },
    expect: 'thin-margin',
  },
  {
    name: 'flexible mask in a tight fold',
    change: (d) => {
      addMask(d, 'solder-mask-flexible')
      fold(d, 3)
    },
    expect: 'fails',
  },
  {
    name: 'flexible mask, and nobody said what the bends do',
    change: (d) => {
      addMask(d, 'solder-mask-flexible')
      for (const bend of d.bends) bend.use = null
    },
    expect: 'not-computed',
  },
]
