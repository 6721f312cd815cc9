import type { Design } from '@/lib/engine'
import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

const put = (given: Partial<Design['features']['components'][number]>) => (design: Design) => {
  Object.assign(getOnly(design.features.components), given)
}

export const componentSupportExamples: readonly ItemExample[] = [
  { name: 'on the board', expect: 'meets' },
  { name: 'over the stiffener', change: put({ zoneId: 'fingers', side: 'top' }), expect: 'meets' },
  {
    name: 'over the stiffener, which reaches under it',
    change: put({ zoneId: 'fingers', side: 'top', overStiffener: true }),
    expect: 'meets',
  },
  { name: 'on the face of the stiffener itself', change: put({ zoneId: 'fingers', side: 'bottom' }), expect: 'fails' },
  {
    name: 'beside the stiffener',
    change: put({ zoneId: 'fingers', side: 'top', overStiffener: false }),
    expect: 'fails',
  },
  { name: 'on bare film', change: put({ zoneId: 'arm' }), expect: 'fails' },
  { name: 'on bare film, with a yes', change: put({ zoneId: 'arm', overStiffener: true }), expect: 'fails' },
  { name: 'nobody said where', change: put({ zoneId: null, overStiffener: true }), expect: 'not-computed' },
  { name: 'nobody said on which face', change: put({ zoneId: 'fingers', side: null }), expect: 'not-computed' },
]
