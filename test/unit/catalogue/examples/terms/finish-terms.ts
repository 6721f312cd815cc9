import type { ItemExample } from '../item-example'

export const finishTermsExamples: readonly ItemExample[] = [
  { name: 'with its specification', expect: 'meets' },
  {
    name: 'a specification of another finish',
    change: (d) => {
      d.brief.finishTerms.standard = 'ipc-4552'
    },
    expect: 'fails',
  },
  {
    name: 'no finish',
    change: (d) => {
      d.brief.surfaceFinish = 'none'
    },
    expect: 'not-applicable',
  },
  {
    name: 'finish open',
    change: (d) => {
      d.brief.surfaceFinish = null
    },
    expect: 'not-computed',
  },
  {
    name: 'gold thickness open',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      d.brief.finishTerms.standard = 'ipc-4552'
      d.brief.finishTerms.nickelUm = 4
    },
    expect: 'not-computed',
  },
  {
    name: 'less gold than the specification',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      Object.assign(d.brief.finishTerms, { standard: 'ipc-4552', nickelUm: 4, topMetalUm: 0.03 })
    },
    expect: 'fails',
  },
  {
    name: 'nickel of no thickness',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      Object.assign(d.brief.finishTerms, { standard: 'ipc-4552', nickelUm: 0, topMetalUm: 0.05 })
    },
    expect: 'fails',
  },
  {
    name: 'gold and nickel stated',
    change: (d) => {
      d.brief.surfaceFinish = 'immersion-gold-over-electroless-nickel'
      Object.assign(d.brief.finishTerms, { standard: 'ipc-4552', nickelUm: 4, topMetalUm: 0.05 })
    },
    expect: 'meets',
  },
]
