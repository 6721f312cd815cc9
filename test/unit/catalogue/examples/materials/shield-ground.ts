import { addShield } from '../changes'
import type { ItemExample } from '../item-example'

export const shieldGroundExamples: readonly ItemExample[] = [
  {
    name: 'tied at four points',
    change: (d) => {
      addShield(d, 10)
    },
    expect: 'needs-judgment',
  },
  {
    name: 'tied nowhere',
    change: (d) => {
      addShield(d, 10)
      d.features.shieldGround.pointCount = 0
    },
    expect: 'fails',
  },
  {
    name: 'openings not on the drawing',
    change: (d) => {
      addShield(d, 10)
      d.features.shieldGround.openingsShown = false
    },
    expect: 'fails',
  },
  {
    name: 'resistance open',
    change: (d) => {
      addShield(d, 10)
      d.features.shieldGround.maxResistanceOhm = null
    },
    expect: 'not-computed',
  },
  { name: 'no shield', expect: 'not-applicable' },
]
