import type { Design, DielectricLayer, Evaluation, ZoneResult } from '@/lib/engine'
import { countConductorLayers } from '../construction-family'
import { listConductorLayers } from './copper-parameters'
import {
  type LocatedValue,
  listStated,
  listValues,
  numberParameter,
  type ParameterDirection,
  type TradeParameter,
} from './parameter'

const GROUP = 'Thickness and layers'
const WHOLE = { kind: 'design', id: 'design', name: 'Whole part' } as const

const round = (value: number) => Math.round(value * 1000) / 1000

function listLayers(design: Design, kind: DielectricLayer['kind']): LocatedValue[] {
  return design.construction.layers.flatMap((layer) =>
    layer.kind === kind
      ? [{ value: layer.thicknessUm, place: { kind: 'layer', id: layer.id, name: layer.name }, foilUm: null }]
      : [],
  )
}

function listZones(
  evaluation: Pick<Evaluation, 'zones'>,
  kinds: readonly string[],
  read: (zone: ZoneResult) => number,
): LocatedValue[] {
  return evaluation.zones.flatMap((zone) =>
    kinds.includes(zone.kind)
      ? [{ value: round(read(zone)), place: { kind: 'zone', id: zone.zoneId, name: zone.name }, foilUm: null }]
      : [],
  )
}

interface SheetThickness {
  readonly key: string
  readonly group: TradeParameter['group']
  readonly kind: DielectricLayer['kind']
  readonly direction: ParameterDirection
  readonly name: string
  readonly question: string
  readonly what: string
  readonly hint: readonly [number, number]
}

const sheetThickness = ({ kind, what, ...entry }: SheetThickness): TradeParameter =>
  numberParameter({
    ...entry,
    unit: 'um',
    verb: entry.direction === 'smaller-is-harder' ? 'take a thicker one' : 'take a thinner one',
    measuredAs: `thickness as bought of each ${what}`,
    measure: ({ design }) => listValues(entry.direction, listLayers(design, kind), `the construction has no ${what}`),
  })

const zoneThickness = (
  key: string,
  question: string,
  kinds: readonly string[],
  direction: ParameterDirection,
  hint: readonly [number, number],
): TradeParameter =>
  numberParameter({
    key,
    group: GROUP,
    name: `${kinds[0] === 'flex' ? 'Flexible' : kinds[0] === 'rigid' ? 'Rigid' : 'Stiffened'} zone thickness, ${direction === 'smaller-is-harder' ? 'minimum' : 'maximum'}`,
    question,
    unit: 'um',
    direction,
    verb: direction === 'smaller-is-harder' ? 'build thicker' : 'build thinner',
    measuredAs: `nominal finished thickness of each ${kinds.join(' or ')} zone`,
    hint,
    measure: ({ evaluation }) =>
      listValues(
        direction,
        listZones(evaluation, kinds, ({ thicknessUm }) => thicknessUm),
        `the design has no ${kinds.join(' or ')} zone`,
      ),
  })

/** Conductor layers, or leaves, that pass through each zone of a kind. */
function countInZones(
  design: Design,
  kinds: readonly string[],
  count: (layerIds: readonly string[]) => number,
): LocatedValue[] {
  return design.construction.zones.flatMap((zone) =>
    kinds.includes(zone.kind)
      ? [
          {
            value: count(zone.presence.map(({ layerId }) => layerId)),
            place: { kind: 'zone' as const, id: zone.id, name: zone.name },
            foilUm: null,
          },
        ]
      : [],
  )
}

export const LAYER_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'conductor-layer-count',
    group: GROUP,
    name: 'Conductor layers, maximum',
    question: 'How many conductor layers?',
    unit: 'count',
    direction: 'larger-is-harder',
    verb: 'reduce',
    measuredAs: 'conductor layers of the construction',
    hint: [6, 12],
    measure: ({ design }) => {
      const value = countConductorLayers(design)
      return value === 0
        ? { kind: 'absent', reason: 'the design has no conductor layer' }
        : { kind: 'values', values: [{ value, place: WHOLE, foilUm: null }] }
    },
  }),
  numberParameter({
    key: 'flex-conductor-layer-count',
    group: GROUP,
    name: 'Conductor layers in flex, maximum',
    question: 'How many conductor layers in a flexible zone?',
    unit: 'count',
    direction: 'larger-is-harder',
    verb: 'reduce',
    measuredAs: 'conductor layers that pass through each flex zone',
    hint: [2, 4],
    measure: ({ design }) => {
      const conductors = new Set(listConductorLayers(design).map(({ id }) => id))
      const count = (layerIds: readonly string[]) => layerIds.filter((id) => conductors.has(id)).length
      return listValues('larger-is-harder', countInZones(design, ['flex'], count), 'the design has no flex zone')
    },
  }),
  numberParameter({
    key: 'unbonded-leaf-count',
    group: GROUP,
    name: 'Unbonded leaves in flex, maximum',
    question: 'How many unbonded leaves in a flexible zone?',
    unit: 'count',
    direction: 'larger-is-harder',
    verb: 'reduce',
    measuredAs: 'leaves between deliberate gaps, in each flex zone that has a gap',
    hint: [2, 3],
    measure: ({ design }) => {
      const gaps = new Set(design.construction.layers.flatMap(({ id, kind }) => (kind === 'unbonded-gap' ? [id] : [])))
      const count = (layerIds: readonly string[]) => layerIds.filter((id) => gaps.has(id)).length + 1
      const leaves = countInZones(design, ['flex'], count).filter(({ value }) => Number(value) > 1)
      return listValues('larger-is-harder', leaves, 'no flex zone has unbonded leaves')
    },
  }),
  numberParameter({
    key: 'rigid-zone-count',
    group: GROUP,
    name: 'Rigid zones, maximum',
    question: 'How many rigid zones may be joined by flex?',
    unit: 'count',
    direction: 'larger-is-harder',
    verb: 'reduce',
    measuredAs: 'rigid zones of a design that has flexible ones',
    hint: [3, 6],
    measure: ({ design }) => {
      const count = design.construction.zones.filter(({ kind }) => kind === 'rigid').length
      const values = count === 0 ? [] : [{ value: count, place: WHOLE, foilUm: null }]
      return listValues('larger-is-harder', values, 'the design has no rigid zone')
    },
  }),
  zoneThickness(
    'rigid-thickness-largest',
    'How thick may a rigid zone be?',
    ['rigid'],
    'larger-is-harder',
    [1600, 2400],
  ),
  zoneThickness(
    'rigid-thickness-smallest',
    'How thin may a rigid zone be?',
    ['rigid'],
    'smaller-is-harder',
    [500, 350],
  ),
  zoneThickness(
    'flex-thickness-largest',
    'How thick may a flexible zone be?',
    ['flex'],
    'larger-is-harder',
    [300, 500],
  ),
  zoneThickness('flex-thickness-smallest', 'How thin may a flexible zone be?', ['flex'], 'smaller-is-harder', [75, 50]),
  zoneThickness(
    'stiffened-thickness-largest',
    'How thick may a stiffened zone be?',
    ['stiffened', 'finger'],
    'larger-is-harder',
    [1600, 2000],
  ),
  numberParameter({
    key: 'finger-thickness-window',
    group: GROUP,
    name: 'Connector end thickness window, minimum',
    question: 'How closely can the thickness of a connector end be held?',
    unit: 'um',
    direction: 'smaller-is-harder',
    verb: 'choose a connector with a wider window',
    measuredAs: 'width of the connector window of each finger zone',
    hint: [60, 40],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        design.construction.zones.filter(({ kind }) => kind === 'finger'),
        ({ id, name, connectorWindow }) =>
          connectorWindow === null
            ? null
            : {
                value: round(connectorWindow.maxUm - connectorWindow.minUm),
                place: { kind: 'zone', id, name },
                foilUm: null,
              },
        'the design has no finger zone',
        'no finger zone states a connector window',
      ),
  }),
  sheetThickness({
    key: 'base-film-thickness-smallest',
    group: GROUP,
    kind: 'base-film',
    direction: 'smaller-is-harder',
    name: 'Base film thickness, minimum',
    question: 'How thin may a base film be?',
    what: 'base film',
    hint: [25, 12.5],
  }),
  sheetThickness({
    key: 'base-film-thickness-largest',
    group: GROUP,
    kind: 'base-film',
    direction: 'larger-is-harder',
    name: 'Base film thickness, maximum',
    question: 'How thick may a base film be?',
    what: 'base film',
    hint: [50, 125],
  }),
  sheetThickness({
    key: 'adhesive-thickness-smallest',
    group: GROUP,
    kind: 'adhesive',
    direction: 'smaller-is-harder',
    name: 'Adhesive thickness, minimum',
    question: 'How thin may an adhesive be?',
    what: 'adhesive',
    hint: [25, 12.5],
  }),
  sheetThickness({
    key: 'rigid-laminate-thickness-smallest',
    group: GROUP,
    kind: 'rigid-laminate',
    direction: 'smaller-is-harder',
    name: 'Rigid laminate thickness, minimum',
    question: 'How thin may a rigid laminate be?',
    what: 'rigid laminate',
    hint: [100, 75],
  }),
  sheetThickness({
    key: 'coverlay-thickness-smallest',
    group: 'Coverlay',
    kind: 'coverlay-film',
    direction: 'smaller-is-harder',
    name: 'Coverlay film thickness, minimum',
    question: 'How thin may a coverlay film be?',
    what: 'coverlay film',
    hint: [25, 12.5],
  }),
  sheetThickness({
    key: 'coverlay-thickness-largest',
    group: 'Coverlay',
    kind: 'coverlay-film',
    direction: 'larger-is-harder',
    name: 'Coverlay film thickness, maximum',
    question: 'How thick may a coverlay film be?',
    what: 'coverlay film',
    hint: [50, 75],
  }),
  sheetThickness({
    key: 'stiffener-thickness-smallest',
    group: 'Stiffeners',
    kind: 'stiffener',
    direction: 'smaller-is-harder',
    name: 'Stiffener thickness, minimum',
    question: 'How thin may a stiffener be?',
    what: 'stiffener',
    hint: [75, 50],
  }),
  sheetThickness({
    key: 'stiffener-thickness-largest',
    group: 'Stiffeners',
    kind: 'stiffener',
    direction: 'larger-is-harder',
    name: 'Stiffener thickness, maximum',
    question: 'How thick may a stiffener be?',
    what: 'stiffener',
    hint: [1000, 1600],
  }),
]
