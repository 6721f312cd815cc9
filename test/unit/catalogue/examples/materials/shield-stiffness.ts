import { addShield, getZone, withoutBends } from '../changes'
import type { ItemExample } from '../item-example'

export const shieldStiffnessExamples: readonly ItemExample[] = [
  { name: 'a 2 um shield film', change: (d) => addShield(d, 2), expect: 'meets' },
  { name: 'a 60 um shield film', change: (d) => addShield(d, 60), expect: 'fails' },
  {
    name: 'a 4 um shield film, which brings too much where it is thickest',
    change: (d) => addShield(d, 4),
    expect: 'thin-margin',
  },
  { name: 'an 8 um shield film', change: (d) => addShield(d, 8), expect: 'fails' },
  {
    name: 'a shield film on the board alone',
    change: (d) => {
      addShield(d, 60)
      const { presence } = getZone(d, 'arm')
      getZone(d, 'board').presence.push(
        ...presence.splice(
          presence.findIndex(({ layerId }) => layerId === 'shield'),
          1,
        ),
      )
    },
    expect: 'not-applicable',
  },
  { name: 'no shield', expect: 'not-applicable' },
  { name: 'no bend listed, and the list not marked', change: withoutBends, expect: 'not-computed' },
]
