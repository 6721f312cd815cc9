import type { ItemExample } from '../item-example'

export const precedenceExamples: readonly ItemExample[] = [
  { name: 'agreed', expect: 'meets' },
  {
    name: 'a standard before the drawing',
    change: (d) => {
      d.brief.agreements.drawingOrStandard = 'standard'
    },
    expect: 'fails',
  },
  {
    name: 'a pair open',
    change: (d) => {
      d.brief.agreements.drawingOrArtwork = null
    },
    expect: 'not-computed',
  },
]
