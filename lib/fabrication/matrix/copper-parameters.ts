import {
  type ConductorFeature,
  type ConductorLayer,
  type Design,
  type FOIL_TYPES,
  findMaterial,
  type Layer,
  withNetClasses,
} from '@/lib/engine'
import {
  choiceParameter,
  type LocatedValue,
  listStated,
  listValues,
  type Measured,
  makeChoices,
  numberParameter,
  type TradeParameter,
} from './parameter'

const GROUP = 'Copper and conductors'
const NO_LAYER = 'the design has no conductor layer'

const isConductor = (layer: Layer): layer is ConductorLayer => layer.kind === 'conductor'
export const listConductorLayers = (design: Design) => design.construction.layers.filter(isConductor)
const onLayer = (layer: ConductorLayer, value: number | string): LocatedValue => ({
  value,
  place: { kind: 'layer', id: layer.id, name: layer.name },
  foilUm: layer.thicknessUm,
})
/** Copper added over the whole of a layer has to be etched with the foil; pads-only plating does not. */
const isPlatedOver = ({ plating }: ConductorLayer) => plating.process === 'panel' || plating.process === 'pattern'

function listConductors(design: Design, isPlated: boolean) {
  const layers = new Map(listConductorLayers(design).map((layer) => [layer.id, layer]))
  return design.features.conductors.flatMap((conductor) => {
    const layer = layers.get(conductor.layerId)
    return layer !== undefined && isPlatedOver(layer) === isPlated ? [{ conductor, layer }] : []
  })
}

const measureConductors =
  (isPlated: boolean, read: (conductor: ConductorFeature) => number | null, what: string) =>
  ({ design }: Measured) =>
    listStated(
      'smaller-is-harder',
      listConductors(design, isPlated),
      ({ conductor, layer }) => {
        const value = read(conductor)
        const place = { kind: 'conductor', id: conductor.id, name: conductor.name } as const
        return value === null ? null : { value, place, foilUm: layer.thicknessUm }
      },
      `the design lists no conductor on ${isPlated ? 'a plated' : 'an unplated'} layer`,
      `no conductor states its ${what}`,
    )

export const COPPER_PARAMETERS: readonly TradeParameter[] = [
  numberParameter({
    key: 'conductor-width',
    group: GROUP,
    name: 'Conductor width, unplated layer, minimum',
    question: 'How narrow may a conductor be, on a layer without plating?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'widen',
    measuredAs: 'width of each listed conductor on a layer with no plating, or pads-only plating',
    hint: [0.1, 0.075],
    measure: measureConductors(false, ({ widthMm }) => widthMm, 'width'),
  }),
  numberParameter({
    key: 'conductor-space',
    group: GROUP,
    name: 'Conductor spacing, unplated layer, minimum',
    question: 'How close may conductors lie, on a layer without plating?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'widen the space',
    measuredAs: 'space beside each listed conductor on a layer with no plating, or pads-only plating',
    hint: [0.1, 0.075],
    measure: measureConductors(false, ({ spaceMm }) => spaceMm, 'space'),
  }),
  numberParameter({
    key: 'plated-conductor-width',
    group: GROUP,
    name: 'Conductor width, plated layer, minimum',
    question: 'How narrow may a conductor be, on a panel- or pattern-plated layer?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'widen',
    measuredAs: 'width of each listed conductor on a panel- or pattern-plated layer',
    hint: [0.125, 0.1],
    measure: measureConductors(true, ({ widthMm }) => widthMm, 'width'),
  }),
  numberParameter({
    key: 'plated-conductor-space',
    group: GROUP,
    name: 'Conductor spacing, plated layer, minimum',
    question: 'How close may conductors lie, on a panel- or pattern-plated layer?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'widen the space',
    measuredAs: 'space beside each listed conductor on a panel- or pattern-plated layer',
    hint: [0.125, 0.1],
    measure: measureConductors(true, ({ spaceMm }) => spaceMm, 'space'),
  }),
  numberParameter({
    key: 'copper-to-outline',
    group: GROUP,
    name: 'Copper to outline, minimum',
    question: 'How close may copper come to the outline?',
    unit: 'mm',
    direction: 'smaller-is-harder',
    verb: 'move copper away from the outline',
    measuredAs: 'the copper-to-outline distance of the features',
    hint: [0.5, 0.25],
    measure: ({ design }) => {
      const value = design.features.copperToOutlineMm
      if (value === null) return { kind: 'unknown', reason: 'the distance from copper to the outline is not stated' }
      return {
        kind: 'values',
        values: [{ value, place: { kind: 'design', id: 'design', name: 'Whole part' }, foilUm: null }],
      }
    },
  }),
  numberParameter({
    key: 'foil-thickness-smallest',
    group: GROUP,
    name: 'Foil thickness, minimum',
    question: 'How thin may foil be?',
    unit: 'um',
    direction: 'smaller-is-harder',
    verb: 'take heavier foil',
    measuredAs: 'foil as bought, per conductor layer',
    hint: [12, 9],
    measure: ({ design }) =>
      listValues(
        'smaller-is-harder',
        listConductorLayers(design).map((layer) => onLayer(layer, layer.thicknessUm)),
        NO_LAYER,
      ),
  }),
  numberParameter({
    key: 'foil-thickness-largest',
    group: GROUP,
    name: 'Foil thickness, maximum',
    question: 'How heavy may foil be?',
    unit: 'um',
    direction: 'larger-is-harder',
    verb: 'take lighter foil',
    measuredAs: 'foil as bought, per conductor layer',
    hint: [35, 70],
    measure: ({ design }) =>
      listValues(
        'larger-is-harder',
        listConductorLayers(design).map((layer) => onLayer(layer, layer.thicknessUm)),
        NO_LAYER,
      ),
  }),
  numberParameter({
    key: 'finished-copper-largest',
    group: GROUP,
    name: 'Finished copper thickness, maximum',
    question: 'How thick may copper be after plating?',
    unit: 'um',
    direction: 'larger-is-harder',
    verb: 'take lighter foil or less plating',
    measuredAs: 'foil plus panel or pattern plating less processing loss, per conductor layer',
    hint: [50, 100],
    measure: ({ design }) =>
      listValues(
        'larger-is-harder',
        listConductorLayers(design).map((layer) =>
          onLayer(
            layer,
            layer.thicknessUm + (isPlatedOver(layer) ? layer.plating.thicknessUm : 0) - layer.processingLossUm,
          ),
        ),
        NO_LAYER,
      ),
  }),
  numberParameter({
    key: 'plating-thickness-largest',
    group: GROUP,
    name: 'Plated copper, maximum',
    question: 'How much copper may be plated on?',
    unit: 'um',
    direction: 'larger-is-harder',
    verb: 'reduce the plating',
    measuredAs: 'copper that the plating process adds, per plated layer',
    hint: [25, 35],
    measure: ({ design }) =>
      listValues(
        'larger-is-harder',
        listConductorLayers(design).flatMap((layer) =>
          layer.plating.process === 'none' ? [] : [onLayer(layer, layer.plating.thicknessUm)],
        ),
        'no layer is plated',
      ),
  }),
  choiceParameter({
    key: 'plating-process',
    group: GROUP,
    name: 'Plating process',
    question: 'Which plating processes are run?',
    choices: makeChoices({ panel: 'panel plating', pattern: 'pattern plating', button: 'pads-only plating' }),
    measuredAs: 'plating process of each plated layer',
    measure: ({ design }) =>
      listValues(
        'one-of',
        listConductorLayers(design).flatMap((layer) =>
          layer.plating.process === 'none' ? [] : [onLayer(layer, layer.plating.process)],
        ),
        'no layer is plated',
      ),
  }),
  choiceParameter({
    key: 'foil-type',
    group: GROUP,
    name: 'Copper foil type',
    question: 'Which kinds of copper foil are worked?',
    choices: makeChoices({
      'rolled-annealed': 'rolled-annealed',
      electrodeposited: 'electrodeposited',
    } satisfies Record<Exclude<(typeof FOIL_TYPES)[number], 'plated'>, string>),
    measuredAs: 'kind of foil of each conductor layer',
    measure: ({ design }) =>
      listStated(
        'one-of',
        listConductorLayers(design),
        (layer) => {
          const type = findMaterial(design, layer.materialId)?.foil?.type
          return type === undefined ? null : onLayer(layer, type)
        },
        NO_LAYER,
        'the kind of foil is not stated',
      ),
  }),
  choiceParameter({
    key: 'plane-pattern',
    group: GROUP,
    name: 'Plane pattern',
    question: 'Which patterns of planes are etched?',
    choices: makeChoices({ solid: 'solid', hatched: 'hatched', split: 'split' }),
    measuredAs: 'pattern of each layer that carries a plane',
    measure: ({ design }) =>
      listStated(
        'one-of',
        listConductorLayers(design).filter(({ role, planePattern }) => role !== 'signal' && planePattern !== 'none'),
        (layer) => (layer.planePattern === null ? null : onLayer(layer, layer.planePattern)),
        'no layer carries a plane',
        'how its planes are patterned is not stated',
      ),
  }),
  ...(
    [
      [
        'impedance-smallest',
        'Impedance, minimum',
        'How low may a controlled impedance be?',
        'smaller-is-harder',
        'raise',
      ],
      [
        'impedance-largest',
        'Impedance, maximum',
        'How high may a controlled impedance be?',
        'larger-is-harder',
        'lower',
      ],
    ] as const
  ).map(([key, name, question, direction, verb]) =>
    numberParameter({
      key,
      isNeed: true,
      group: GROUP,
      name,
      question,
      unit: 'ohm',
      direction,
      verb,
      measuredAs: 'each stated impedance, of its conductor or net class',
      measure: ({ design }) =>
        listValues(
          direction,
          withNetClasses(design).features.conductors.flatMap(({ id, name: called, layerId, impedanceOhm }) => {
            const layer = listConductorLayers(design).find((each) => each.id === layerId)
            const place = { kind: 'conductor', id, name: called } as const
            return impedanceOhm === null ? [] : [{ value: impedanceOhm, place, foilUm: layer?.thicknessUm ?? null }]
          }),
          'no conductor states an impedance',
        ),
    }),
  ),
  numberParameter({
    key: 'impedance-tolerance',
    group: GROUP,
    name: 'Impedance tolerance, minimum',
    question: 'How tightly can impedance be held?',
    unit: 'pct',
    direction: 'smaller-is-harder',
    verb: 'allow more tolerance',
    measuredAs: 'tolerance of each stated impedance',
    hint: [10, 7],
    measure: ({ design }) =>
      listStated(
        'smaller-is-harder',
        withNetClasses(design).features.conductors.filter(({ impedanceOhm }) => impedanceOhm !== null),
        ({ id, name, layerId, impedance }) => {
          const layer = listConductorLayers(design).find((each) => each.id === layerId)
          const place = { kind: 'conductor', id, name } as const
          return impedance.tolerancePct === null
            ? null
            : { value: impedance.tolerancePct, place, foilUm: layer?.thicknessUm ?? null }
        },
        'no conductor states an impedance',
        'no stated impedance has a tolerance',
      ),
  }),
]
