import { getConductorLayer, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

/** Foil of half an ounce: 15.4 um at its least; processing may take 4 um where it is not plated, 2 um where it is. */
const HALF_OUNCE = { thicknessUm: 17.1, tolerancePlusUm: 1.7, toleranceMinusUm: 1.7 } as const

export const finishedCopperExamples: readonly ItemExample[] = [
  { name: 'as it is', expect: 'meets' },
  {
    name: 'processing that takes 6 um of half an ounce: 11.1 um, of 11.4',
    change: (d) => Object.assign(getConductorLayer(d, 'l2'), { ...HALF_OUNCE, processingLossUm: 6 }),
    expect: 'fails',
  },
  {
    name: 'processing that takes 5 um: 12.1 um, 10.4 at the least',
    change: (d) => Object.assign(getConductorLayer(d, 'l2'), { ...HALF_OUNCE, processingLossUm: 5 }),
    expect: 'thin-margin',
  },
  {
    name: 'plating of 22 um on half an ounce: enough for class 2 (33.4 um)',
    change: (d) => {
      d.brief.performanceClass = 'class-2'
      plate(d)
    },
    expect: 'meets',
  },
  {
    name: 'the same in class 3 (38.4 um)',
    change: (d) => {
      d.brief.performanceClass = 'class-3'
      plate(d)
    },
    expect: 'fails',
  },
  {
    name: 'the same where nobody stated the class',
    change: (d) => {
      d.brief.performanceClass = null
      plate(d)
    },
    expect: 'not-computed',
  },
  {
    name: 'no class, where nothing is plated: every class asks for the same',
    change: (d) => {
      d.brief.performanceClass = null
      for (const layer of d.construction.layers) {
        if (layer.kind === 'conductor') {
          layer.plating = { process: 'none', thicknessUm: 0, toleranceUm: 0, materialId: null }
        }
      }
      for (const zone of d.construction.zones) {
        for (const presence of zone.presence) presence.platedCopper = null
      }
    },
    expect: 'meets',
  },
  {
    name: 'a foil that no row is for',
    change: (d) => {
      getConductorLayer(d, 'l2').thicknessUm = 25
    },
    expect: 'cannot-tell',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]

function plate(d: Parameters<NonNullable<ItemExample['change']>>[0]): void {
  Object.assign(getConductorLayer(d, 'l2'), {
    ...HALF_OUNCE,
    toleranceMinusUm: 1,
    processingLossUm: 2,
    plating: { process: 'panel', thicknessUm: 22, toleranceUm: 1, materialId: 'copper-plated' },
  })
}
