import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const contactFinishExamples: readonly ItemExample[] = [
  { name: 'hard gold, few matings', expect: 'meets' },
  {
    name: 'hard gold, many matings',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { matings: 500 })
    },
    expect: 'meets',
  },
  {
    name: 'soft gold, many matings',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { matings: 500, isHardGold: false })
    },
    expect: 'fails',
  },
  {
    name: 'nobody said whether the gold is hard, many matings',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { matings: 500, isHardGold: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'immersion gold, few matings',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), {
        finish: 'immersion-gold-over-electroless-nickel',
        isHardGold: null,
      })
    },
    expect: 'meets',
  },
  {
    name: 'immersion gold, many matings',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { finish: 'immersion-gold-over-electroless-nickel', matings: 31 })
    },
    expect: 'fails',
  },
  {
    name: 'organic coat',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { finish: 'organic-solderability-preservative' })
    },
    expect: 'fails',
  },
  {
    name: 'no finish',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { finish: 'none' })
    },
    expect: 'fails',
  },
  {
    name: 'tin',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { finish: 'immersion-tin' })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'finish not stated',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { finish: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'matings not stated',
    change: (d) => {
      Object.assign(getOnly(d.features.connectors), { matings: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'a finger end without its connector',
    change: (d) => {
      d.features.connectors = []
    },
    expect: 'not-computed',
  },
  {
    name: 'no contact end',
    change: (d) => {
      d.features.connectors = []
      d.construction.zones = d.construction.zones.filter(({ kind }) => kind !== 'finger')
      d.construction.layers = d.construction.layers.filter(({ id }) => !id.startsWith('stiffener'))
      d.features.stiffeners = []
    },
    expect: 'not-applicable',
  },
]
