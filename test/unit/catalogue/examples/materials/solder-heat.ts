import { type Design, findMaterial } from '@/lib/engine'
import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

/** Layers of these kinds get a material of the design's own, which states what it bears in soldering. */
function rate(design: Design, kinds: readonly string[], maxSolderDegC: number): void {
  for (const layer of design.construction.layers) {
    if (layer.kind === 'unbonded-gap' || !kinds.includes(layer.kind)) continue
    const material = findMaterial(design, layer.materialId)
    if (material === null) continue
    const id = `own-${design.materials.length}`
    const rating = { value: maxSolderDegC, sourceKey: 'commonPractice', spread: null }
    design.materials.push({ ...material, id, name: `${material.name}, rated`, maxSolderDegC: rating })
    layer.materialId = id
  }
}

export const solderHeatExamples: readonly ItemExample[] = [
  { name: 'bears the profile', expect: 'meets' },
  {
    name: 'coverlay does not',
    change: (d) => {
      d.brief.assembly.coverlayRatingDegC = 230
    },
    expect: 'fails',
  },
  {
    name: 'stiffener does not',
    change: (d) => {
      getOnly(d.features.stiffeners).heatRatingDegC = 230
    },
    expect: 'fails',
  },
  {
    name: 'stiffener comes after soldering',
    change: (d) => {
      Object.assign(getOnly(d.features.stiffeners), { heatRatingDegC: null, bonded: 'after-soldering' })
    },
    expect: 'meets',
  },
  {
    name: 'coverlay’s rating open, and the records of its film and adhesive state one',
    change: (d) => {
      d.brief.assembly.coverlayRatingDegC = null
      rate(d, ['coverlay-film', 'adhesive'], 288)
    },
    expect: 'meets',
  },
  {
    name: 'coverlay’s rating open, and its film alone has one',
    change: (d) => {
      d.brief.assembly.coverlayRatingDegC = null
      rate(d, ['coverlay-film'], 288)
    },
    expect: 'not-computed',
  },
  {
    name: 'a material’s record that bears less than what somebody typed',
    change: (d) => rate(d, ['adhesive'], 230),
    expect: 'fails',
  },
  {
    name: 'a material’s record that bears it at nominal and not over its spread',
    change: (d) => {
      rate(d, ['coverlay-film'], 250)
      for (const { maxSolderDegC } of d.materials) {
        if (maxSolderDegC !== null) maxSolderDegC.spread = { low: 240, high: 260, sourceKey: 'commonPractice' }
      }
    },
    expect: 'thin-margin',
  },
  {
    name: 'a stiffener bonded after soldering need not bear it',
    change: (d) => {
      Object.assign(getOnly(d.features.stiffeners), { heatRatingDegC: null, bonded: 'after-soldering' })
      rate(d, ['stiffener'], 150)
    },
    expect: 'meets',
  },
  {
    name: 'stiffener’s rating open',
    change: (d) => {
      getOnly(d.features.stiffeners).heatRatingDegC = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a stiffener of which nothing is typed',
    change: (d) => {
      d.features.stiffeners = []
    },
    expect: 'not-computed',
  },
  {
    name: 'peak open',
    change: (d) => {
      d.brief.assembly.solderPeakDegC = null
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing is soldered',
    change: (d) => {
      d.brief.solderedAssembly = false
    },
    expect: 'not-applicable',
  },
]
