import type { Design } from '@/lib/engine'
import { getBend, getOnly, getPresence, getZone } from '../changes'
import type { ItemExample } from '../item-example'

const note = (bendId: string, text: string) => (d: Design) => {
  getBend(d, bendId).note = text
}

export const statementsAgreeExamples: readonly ItemExample[] = [
  { name: 'fields and names that agree', expect: 'meets' },
  {
    name: 'a stiffener nearer to the bend than its nearest edge',
    change: (d) => {
      const stiffener = getOnly(d.features.stiffeners)
      stiffener.nearestBend = { bendId: 'fold', distanceMm: 0.5 }
      getBend(d, 'fold').distanceToRigidMm = 4
    },
    expect: 'fails',
  },
  {
    name: 'a conductor that crosses a bend where its layer is not',
    change: (d) => {
      const zone = getZone(d, getBend(d, 'hinge').zoneId)
      const layerId = d.features.conductors.find(({ crossings }) =>
        crossings.some(({ bendId }) => bendId === 'hinge'),
      )?.layerId
      if (layerId !== undefined) getPresence(d, zone.id, layerId)
      zone.presence = zone.presence.filter((each) => each.layerId !== layerId)
    },
    expect: 'fails',
  },
  {
    name: 'a flex test over a larger mandrel than the bend',
    change: (d) => {
      getBend(d, 'hinge').flexTest.mandrelDiameterMm = 80
    },
    expect: 'fails',
  },
  {
    name: 'contacts with metal under a finish without any',
    change: (d) => {
      d.brief.surfaceFinish = 'none'
      for (const zone of d.construction.zones) {
        if (zone.kind === 'finger') zone.contactFinish = { thicknessUm: 4, toleranceUm: 1 }
      }
    },
    expect: 'fails',
  },
  {
    name: 'components on a part that is not soldered',
    change: (d) => {
      d.brief.solderedAssembly = false
    },
    expect: 'fails',
  },
  {
    name: 'a note with another radius: it may speak of something else',
    change: note('hinge', 'Runs over a radius of 9 mm.'),
    expect: 'cannot-tell',
  },
  {
    name: 'a note with the radius of the field',
    change: note('hinge', 'Runs over a radius of 12 mm.'),
    expect: 'meets',
  },
  {
    name: 'a layer called L1 that is the second',
    change: (d) => {
      const second = d.construction.layers.filter(({ kind }) => kind === 'conductor')[1]
      if (second !== undefined) second.name = 'L1 flex'
    },
    expect: 'cannot-tell',
  },
  {
    name: 'a file of another revision',
    facts: { revisionLabel: 'B', artworkFileNames: ['top_revA.gbr'] },
    expect: 'cannot-tell',
  },
  {
    name: 'a file of this revision',
    facts: { revisionLabel: 'B', artworkFileNames: ['top_revB.gbr', 'L3.gbr'] },
    expect: 'meets',
  },
  {
    name: 'a file for a layer that the construction lacks',
    facts: { artworkFileNames: ['copper-L4.gbr'] },
    expect: 'cannot-tell',
  },
  {
    name: 'fields that contradict weigh more than words that may',
    change: (d) => {
      note('hinge', 'Runs over a radius of 9 mm.')(d)
      d.brief.solderedAssembly = false
    },
    expect: 'fails',
  },
]
