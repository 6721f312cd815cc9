import type { ItemExample } from '../item-example'

export const markingExamples: readonly ItemExample[] = [
  { name: 'all stated', expect: 'meets' },
  {
    name: 'within a bend',
    change: (d) => {
      d.brief.marking.area = 'flex-in-bend'
    },
    expect: 'fails',
  },
  {
    name: 'on a zone that is not there',
    change: (d) => {
      d.brief.marking.area = 'stiffened'
    },
    expect: 'fails',
  },
  {
    name: 'letters too small',
    change: (d) => {
      d.brief.marking.letterHeightMm = 0.5
    },
    expect: 'fails',
  },
  {
    name: 'no lot code',
    change: (d) => {
      d.brief.marking.lotOrDate = 'none'
    },
    expect: 'fails',
  },
  {
    name: 'a flame mark without a class',
    change: (d) => {
      d.brief.marking.flameMark = 'on-part'
    },
    expect: 'fails',
  },
  {
    name: 'on the packing alone',
    change: (d) => {
      Object.assign(d.brief.marking, {
        partNumber: 'on-packing',
        lotOrDate: 'on-packing',
        method: null,
        area: null,
        letterHeightMm: null,
      })
    },
    expect: 'meets',
  },
  {
    name: 'nobody said where',
    change: (d) => {
      d.brief.marking.area = null
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing said',
    change: (d) => {
      d.brief.marking.partNumber = null
    },
    expect: 'not-computed',
  },
]
