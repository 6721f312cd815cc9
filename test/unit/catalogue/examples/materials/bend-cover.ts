import type { Design } from '@/lib/engine'
import { addLayersBelow, getConductorLayer, getFilm, getZone, makeBendsFolds, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

/** The coverlay of the arm makes room for a flexible mask. */
const maskArm = (design: Design, insideRadiusMm: number) => {
  const arm = getZone(design, 'arm')
  arm.presence = arm.presence.filter(({ layerId }) => !layerId.startsWith('cover-top'))
  addLayersBelow(
    design,
    'prepreg-top',
    [{ ...getFilm(design, 'mask-top'), id: 'mask-arm', name: 'Mask on flex', materialId: 'solder-mask-flexible' }],
    ['arm'],
  )
  makeBendsFolds(design)
  for (const bend of design.bends) Object.assign(bend, { insideRadiusMm, radiusToleranceMm: 0.3 })
}

export const bendCoverExamples: readonly ItemExample[] = [
  { name: 'coverlay above, base film below', expect: 'meets' },
  {
    name: 'coverlay and its adhesive left out of the arm',
    change: (d) => {
      const arm = getZone(d, 'arm')
      arm.presence = arm.presence.filter(({ layerId }) => !layerId.startsWith('cover-top'))
    },
    expect: 'fails',
  },
  {
    name: 'adhesive alone over the copper',
    change: (d) => {
      const arm = getZone(d, 'arm')
      arm.presence = arm.presence.filter(({ layerId }) => layerId !== 'cover-top')
    },
    expect: 'fails',
  },
  {
    name: 'no copper left to cover',
    change: (d) => {
      getConductorLayer(d, 'l2').coverageFraction = 0
      const arm = getZone(d, 'arm')
      arm.presence = arm.presence.filter(({ layerId }) => !layerId.startsWith('cover-top'))
    },
    expect: 'meets',
  },
  { name: 'flexible mask on a wide fold', change: (d) => maskArm(d, 12), expect: 'meets' },
  {
    name: 'flexible mask on a fold that is wide at nominal alone',
    change: (d) => maskArm(d, 10.1),
    expect: 'thin-margin',
  },
  { name: 'flexible mask on a tight fold', change: (d) => maskArm(d, 3), expect: 'fails' },
  {
    name: 'flexible mask on wide bends of which nobody said what they do',
    change: (d) => {
      maskArm(d, 12)
      for (const bend of d.bends) bend.use = null
    },
    expect: 'not-computed',
  },
  {
    name: 'flexible mask on a wide bend that moves',
    change: (d) => {
      maskArm(d, 12)
      for (const bend of d.bends) Object.assign(bend, { use: 'dynamic', requiredCycles: 100 })
    },
    expect: 'fails',
  },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
