import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

export const bendToRigidExamples: readonly ItemExample[] = [
  { name: '6 mm', expect: 'meets' },
  {
    name: '1 mm',
    change: (d) => {
      getBend(d, 'hinge').distanceToRigidMm = 1
    },
    expect: 'fails',
  },
  {
    name: 'not measured',
    change: (d) => {
      getBend(d, 'hinge').distanceToRigidMm = null
    },
    expect: 'not-computed',
  },
]
