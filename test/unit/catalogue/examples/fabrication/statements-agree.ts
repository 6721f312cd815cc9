import type { Design } from '@/lib/engine'
import { getBend, getOnly, getPresence, getZone } from '../changes'
import type { ItemExample } from '../item-example'

const note = (bendId: string, text: string) => (d: Design) => {
  getBend(d, bendId).note = text
}

/** 140 by 12 mm: half of the way round is 152 mm. */
function drawOutline(d: Design): void {
  d.features.outline = {
    verticesMm: [
      [0, 0],
      [140, 0],
      [140, 12],
      [0, 12],
    ],
    rollingDirection: 'either',
  }
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
    name: 'an axis of less than half of the zone that it runs across',
    change: (d) => {
      getBend(d, 'fold').axisLengthMm = 5.7
    },
    expect: 'fails',
  },
  {
    name: 'an axis shorter than its zone is wide, as where film tapers',
    change: (d) => {
      getBend(d, 'fold').axisLengthMm = 6
    },
    expect: 'cannot-tell',
  },
  {
    name: 'an axis that is short within readings',
    change: (d) => {
      getBend(d, 'fold').axisLengthMm = 11.4
    },
    expect: 'meets',
  },
  {
    name: 'an axis that is short by what is cut out beside it',
    change: (d) => {
      getBend(d, 'fold').axisLengthMm = 9
      for (const slit of d.features.slits) slit.widthMm = 3 / d.features.slits.length
      for (const each of d.bends) if (each.id !== 'fold') each.axisLengthMm = 9
    },
    expect: 'meets',
  },
  {
    name: 'conductors wider than the axis of the bend that they cross',
    change: (d) => {
      getZone(d, getBend(d, 'hinge').zoneId).widthMm = null
      const [conductor] = d.features.conductors.filter(({ crossings }) =>
        crossings.some(({ bendId }) => bendId === 'hinge'),
      )
      if (conductor !== undefined) conductor.widthMm = 12.5
    },
    expect: 'fails',
  },
  {
    name: 'plating that leaves a third of the drill open',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { drillMm: 0.3, wallPlatingUm: 100 })
    },
    expect: 'fails',
  },
  {
    name: 'plating that leaves half of the drill open',
    change: (d) => {
      Object.assign(getOnly(d.features.holes), { drillMm: 0.3, wallPlatingUm: 75 })
    },
    expect: 'meets',
  },
  {
    name: 'a rim of 3 mm, where nobody knows how large the part is',
    change: (d) => {
      for (const zone of d.construction.zones) zone.lengthMm = null
      for (const pad of d.features.pads) pad.coverlayCaptureMm = 3
    },
    expect: 'fails',
  },
  {
    name: 'a distance longer than all zones in a row',
    change: (d) => {
      const way = d.construction.zones.reduce(
        (sum, { lengthMm, widthMm }) => sum + Math.hypot(lengthMm ?? 0, widthMm ?? 0),
        0,
      )
      getOnly(d.features.holes).transitionDistanceMm = way + 1
    },
    expect: 'cannot-tell',
  },
  {
    name: 'a distance longer than any way within the outline',
    change: (d) => {
      drawOutline(d)
      getOnly(d.features.holes).transitionDistanceMm = 153
    },
    expect: 'fails',
  },
  {
    name: 'a distance as long as a way within the outline may be',
    change: (d) => {
      drawOutline(d)
      getOnly(d.features.holes).transitionDistanceMm = 151
    },
    expect: 'meets',
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
