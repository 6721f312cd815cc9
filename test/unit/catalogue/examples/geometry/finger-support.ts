import { makePresence } from '@/lib/engine'
import { getZone, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const fingerSupportExamples: readonly ItemExample[] = [
  { name: 'with a stiffener', expect: 'meets' },
  {
    name: 'without one',
    change: (d) => {
      const fingers = getZone(d, 'fingers')
      // Every layer must be somewhere: the stiffener moves to the board.
      getZone(d, 'board').presence.push(...fingers.presence.splice(2))
    },
    expect: 'fails',
  },
  {
    name: 'coverlay over the contacts',
    change: (d) => {
      getZone(d, 'fingers').presence.push(makePresence('cover-top'), makePresence('cover-top-adhesive'))
    },
    expect: 'fails',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
