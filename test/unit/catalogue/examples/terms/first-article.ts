import type { ItemExample } from '../item-example'

export const firstArticleExamples: readonly ItemExample[] = [
  { name: 'agreed', expect: 'meets' },
  {
    name: 'nobody folds it',
    change: (d) => {
      d.brief.acceptance.measuredFoldedBy = 'nobody'
    },
    expect: 'fails',
  },
  {
    name: 'nobody cuts sections',
    change: (d) => {
      d.brief.acceptance.sectionsBy = 'nobody'
    },
    expect: 'fails',
  },
  {
    name: 'number of pieces open',
    change: (d) => {
      d.brief.acceptance.firstArticleCount = null
    },
    expect: 'not-computed',
  },
  {
    name: 'no hole to cut',
    change: (d) => {
      d.brief.acceptance.sectionsBy = null
      for (const hole of d.features.holes) hole.plated = false
    },
    expect: 'meets',
  },
]
