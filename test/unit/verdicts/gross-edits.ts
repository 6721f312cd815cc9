import { type Design, makePresence } from '@/lib/engine'

/**
 * Gross changes that any design can suffer, each with the items one of which must speak. A change leaves alone what a design does not have. Common
 * practice, no published source.
 */
export interface GrossEdit {
  readonly name: string
  readonly namedBy: readonly string[]
  readonly change: (design: Design) => void
}

const bentZones = ({ bends, construction }: Design, use?: 'dynamic') =>
  construction.zones.filter(({ id }) =>
    bends.some((bend) => bend.zoneId === id && (use === undefined || bend.use === use)),
  )

const layersOf = ({ construction }: Design, ...kinds: Design['construction']['layers'][number]['kind'][]) =>
  construction.layers.filter(({ kind }) => kinds.includes(kind))

/** Layers that no zone has any longer are gone. */
function dropUnused({ construction }: Design): void {
  const used = new Set(construction.zones.flatMap(({ presence }) => presence.map(({ layerId }) => layerId)))
  construction.layers = construction.layers.filter(({ id }) => used.has(id))
}

function takeOut(design: Design, zones: Design['construction']['zones'], kind: 'coverlay-film' | 'solder-mask'): void {
  const gone = new Set(layersOf(design, kind).map(({ id }) => id))
  for (const zone of zones) zone.presence = zone.presence.filter(({ layerId }) => !gone.has(layerId))
  dropUnused(design)
}

export const GROSS_EDITS: readonly GrossEdit[] = [
  {
    name: 'bare copper where the part bends',
    namedBy: ['bend-cover'],
    change: (d) => takeOut(d, bentZones(d), 'coverlay-film'),
  },
  {
    name: 'ten times the depth of each hole to its drill',
    namedBy: ['hole-aspect'],
    change: (d) => {
      for (const hole of d.features.holes) if (hole.drillMm !== null) hole.drillMm /= 10
    },
  },
  {
    name: 'half of the laminate on one side',
    namedBy: ['stack-symmetry'],
    change: (d) => {
      const [upper] = layersOf(d, 'rigid-laminate')
      if (upper !== undefined) upper.thicknessUm /= 2
    },
  },
  {
    name: 'a thirtieth of each radius',
    // Where no strain is known that plated copper bears, that of the film speaks.
    namedBy: ['bend-strain', 'fatigue-life', 'film-strain'],
    change: (d) => {
      for (const bend of d.bends) {
        bend.insideRadiusMm /= 30
        bend.radiusToleranceMm /= 30
      }
    },
  },
  {
    name: 'a radius longer than its zone',
    namedBy: ['bend-fit'],
    change: (d) => {
      for (const bend of d.bends) bend.insideRadiusMm = 300
    },
  },
  {
    name: 'as many cycles as can be stated',
    namedBy: ['fatigue-life'],
    change: (d) => {
      for (const bend of d.bends) if (bend.requiredCycles !== null) bend.requiredCycles = 1e12
    },
  },
  {
    name: 'electrodeposited foil in what moves',
    namedBy: ['foil-type'],
    change: (d) => {
      const inMotion = new Set(
        bentZones(d, 'dynamic').flatMap(({ presence }) => presence.map(({ layerId }) => layerId)),
      )
      for (const layer of d.construction.layers)
        if (layer.kind === 'conductor' && inMotion.has(layer.id)) layer.materialId = 'copper-ed'
    },
  },
  {
    name: 'plating over the whole of each bend',
    namedBy: ['plating-in-bend'],
    change: (d) => {
      for (const zone of bentZones(d)) {
        for (const presence of zone.presence) {
          const layer = d.construction.layers.find(({ id }) => id === presence.layerId)
          if (layer?.kind !== 'conductor') continue
          layer.plating = { process: 'panel', thicknessUm: 25, toleranceUm: 5, materialId: 'copper-plated' }
          presence.platedCopper = 'whole'
        }
      }
    },
  },
  {
    name: 'solder mask in each bend',
    namedBy: ['solder-mask-in-bend'],
    change: (d) => {
      const mask = layersOf(d, 'solder-mask')[0]
      if (mask === undefined) return
      for (const zone of bentZones(d))
        if (!zone.presence.some(({ layerId }) => layerId === mask.id)) zone.presence.push(makePresence(mask.id))
    },
  },
  {
    name: 'boards without solder mask',
    namedBy: ['outer-cover'],
    change: (d) => takeOut(d, d.construction.zones, 'solder-mask'),
  },
  {
    name: 'acrylic through the boards',
    namedBy: ['flexible-adhesive-in-rigid', 'flexible-adhesive-in-rigid-class-three'],
    change: (d) => {
      for (const layer of d.construction.layers) {
        if (layer.kind !== 'adhesive') continue
        layer.materialId = 'acrylic-adhesive'
        for (const zone of d.construction.zones)
          if (zone.kind === 'rigid' && !zone.presence.some(({ layerId }) => layerId === layer.id))
            zone.presence.push(makePresence(layer.id))
      }
    },
  },
  {
    name: 'conductors of a hundredth of a millimetre',
    namedBy: ['conductor-width'],
    change: (d) => {
      for (const conductor of d.features.conductors) conductor.widthMm = 0.01
    },
  },
  {
    name: 'spaces of a hundredth of a millimetre',
    namedBy: ['conductor-space'],
    change: (d) => {
      for (const conductor of d.features.conductors) conductor.spaceMm = 0.01
    },
  },
  {
    name: 'conductors wider than the part',
    namedBy: ['statements-agree'],
    change: (d) => {
      for (const conductor of d.features.conductors) conductor.widthMm = 900
    },
  },
  {
    name: 'a hundred times each current',
    namedBy: ['conductor-current'],
    change: (d) => {
      for (const conductor of d.features.conductors)
        if (conductor.currentAmp !== null) conductor.currentAmp = Math.min(1000, conductor.currentAmp * 100)
    },
  },
  {
    name: '240 °C in service',
    namedBy: ['operating-temperature'],
    change: (d) => {
      if (d.brief.operatingMaxDegC !== null) d.brief.operatingMaxDegC = 240
    },
  },
  {
    name: 'lands hardly larger than their holes',
    namedBy: ['annular-ring'],
    change: (d) => {
      for (const hole of d.features.holes) if (hole.drillMm !== null) hole.landMm = hole.drillMm + 0.02
    },
  },
  {
    name: 'copper at the edge',
    namedBy: ['copper-to-outline'],
    change: (d) => {
      if (d.features.copperToOutlineMm !== null) d.features.copperToOutlineMm = 0
    },
  },
  {
    name: 'plated holes where the part moves',
    namedBy: ['holes-in-flex'],
    change: (d) => {
      const [zone] = bentZones(d, 'dynamic')
      if (zone !== undefined) for (const hole of d.features.holes) hole.zoneId = zone.id
    },
  },
  {
    name: 'components on film that bends',
    namedBy: ['component-support'],
    change: (d) => {
      const [zone] = bentZones(d)
      if (zone !== undefined) for (const component of d.features.components) component.zoneId = zone.id
    },
  },
  {
    name: 'holes marked as none, though layers are plated',
    namedBy: ['feature-lists'],
    change: (d) => {
      const isPlated = d.construction.layers.some(
        (layer) => layer.kind === 'conductor' && layer.plating.process !== 'none',
      )
      if (!isPlated || d.features.holes.length === 0) return
      d.features.holes = []
      d.features.none.push('holes')
    },
  },
  {
    name: 'a hole five metres from its transition',
    namedBy: ['statements-agree'],
    change: (d) => {
      for (const hole of d.features.holes) hole.transitionDistanceMm = 5000
    },
  },
  {
    name: 'a bend of a hundredth of a degree',
    namedBy: ['statements-agree'],
    change: (d) => {
      for (const bend of d.bends) Object.assign(bend, { angleDeg: 0.01, flexesFromAngleDeg: null })
    },
  },
  {
    name: 'sharp corners beside the flex',
    namedBy: ['corner-radius'],
    change: (d) => {
      for (const corner of d.features.outlineCorners) corner.insideRadiusMm = 0
    },
  },
  {
    name: 'conductors at 30 degrees across their bends',
    namedBy: ['crossing-angle'],
    change: (d) => {
      for (const { crossings } of d.features.conductors) for (const each of crossings) each.angleToAxisDeg = 30
    },
  },
  {
    name: 'a fold at its rigid or stiffened edge',
    namedBy: ['straight-film'],
    change: (d) => {
      for (const bend of d.bends) bend.distanceToRigidMm = 0
    },
  },
  {
    name: 'a connector of half the thickness',
    namedBy: ['finger-thickness'],
    change: (d) => {
      for (const { connectorWindow } of d.construction.zones)
        if (connectorWindow !== null) {
          connectorWindow.minUm /= 2
          connectorWindow.maxUm /= 2
        }
    },
  },
]
