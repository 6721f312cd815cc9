import type { Design } from '@/lib/engine'
import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

function withoutPlating(design: Design): void {
  for (const layer of design.construction.layers) {
    if (layer.kind === 'conductor')
      layer.plating = { process: 'none', thicknessUm: 0, toleranceUm: 0, materialId: null }
  }
  for (const { presence } of design.construction.zones) for (const each of presence) each.platedCopper = null
  for (const hole of design.features.holes) hole.plated = false
}

/** So many conductor layers, and no zone that is a board. */
function onlyFlex(design: Design, count: number): void {
  const { construction } = design
  for (const zone of construction.zones) if (zone.kind === 'rigid') zone.kind = 'stiffened'
  const conductors = construction.layers.filter(({ kind }) => kind === 'conductor').map(({ id }) => id)
  // The one that the arm bends stays in any case.
  const kept = ['l2', ...conductors.filter((id) => id !== 'l2')].slice(0, count)
  const gone = conductors.filter((id) => !kept.includes(id))
  construction.layers = construction.layers.filter(({ id }) => !gone.includes(id))
  for (const zone of construction.zones) zone.presence = zone.presence.filter(({ layerId }) => !gone.includes(layerId))
  design.features.holes = []
  for (const list of ['pads', 'components', 'widthSteps'] as const) design.features[list] = []
}

/** What is stated of a flexible circuit with so many layers. */
const asFlex =
  (count: number, circuitType: NonNullable<Design['brief']['circuitType']>, isPlated: boolean) => (d: Design) => {
    if (!isPlated) withoutPlating(d)
    onlyFlex(d, count)
    d.brief.circuitType = circuitType
  }

export const circuitTypeExamples: readonly ItemExample[] = [
  { name: 'type 4 for a rigid-flex part', expect: 'meets' },
  {
    name: 'type 1 for the same',
    change: (d) => {
      d.brief.circuitType = 'type-1'
    },
    expect: 'fails',
  },
  {
    name: 'not stated',
    change: (d) => {
      d.brief.circuitType = null
    },
    expect: 'not-computed',
  },
  { name: 'type 1 for one layer without a board', change: asFlex(1, 'type-1', true), expect: 'meets' },
  { name: 'type 2 for one layer without a board', change: asFlex(1, 'type-2', true), expect: 'fails' },
  { name: 'type 5 for one layer without a board', change: asFlex(1, 'type-5', false), expect: 'fails' },
  { name: 'type 2 for two plated layers', change: asFlex(2, 'type-2', true), expect: 'meets' },
  { name: 'type 1 for two plated layers', change: asFlex(2, 'type-1', true), expect: 'fails' },
  { name: 'type 3 for two plated layers', change: asFlex(2, 'type-3', true), expect: 'fails' },
  { name: 'type 5 for two plated layers', change: asFlex(2, 'type-5', true), expect: 'fails' },
  { name: 'type 2 for two layers without plating', change: asFlex(2, 'type-2', false), expect: 'meets' },
  { name: 'type 5 for two layers without plating', change: asFlex(2, 'type-5', false), expect: 'meets' },
  { name: 'type 3 for three plated layers', change: asFlex(3, 'type-3', true), expect: 'meets' },
  { name: 'type 2 for three plated layers', change: asFlex(3, 'type-2', true), expect: 'fails' },
  { name: 'type 4 for three layers without a board', change: asFlex(3, 'type-4', true), expect: 'fails' },
  {
    name: 'type 4 for a board with one conductor layer',
    change: (d) => {
      withoutPlating(d)
      d.features.holes = []
      d.construction.layers = d.construction.layers.filter(({ id }) => id !== 'l1' && id !== 'l3')
      for (const zone of d.construction.zones)
        zone.presence = zone.presence.filter(({ layerId }) => layerId !== 'l1' && layerId !== 'l3')
      for (const list of ['pads', 'components', 'widthSteps'] as const) d.features[list] = []
    },
    expect: 'meets',
  },
  {
    name: 'type 5 where one layer of three is plated',
    change: (d) => {
      const { l1 } = Object.fromEntries(
        d.construction.layers.flatMap((layer) => (layer.kind === 'conductor' ? [[layer.id, layer.plating]] : [])),
      )
      withoutPlating(d)
      for (const layer of d.construction.layers)
        if (layer.id === 'l1' && layer.kind === 'conductor' && l1 !== undefined) layer.plating = l1
      d.brief.circuitType = 'type-5'
    },
    expect: 'fails',
  },
  {
    name: 'type 5 where no hole and no layer is plated',
    change: (d) => {
      withoutPlating(d)
      d.brief.circuitType = 'type-5'
    },
    expect: 'meets',
  },
  {
    name: 'type 5 where one hole of two is plated',
    change: (d) => {
      withoutPlating(d)
      d.brief.circuitType = 'type-5'
      const via = getOnly(d.features.holes)
      d.features.holes.push({ ...via, id: 'plated', name: 'Plated', plated: true })
    },
    expect: 'fails',
  },
  {
    name: 'type 5 where layers are plated and the hole is not',
    change: (d) => {
      d.brief.circuitType = 'type-5'
      getOnly(d.features.holes).plated = false
    },
    expect: 'fails',
  },
]
