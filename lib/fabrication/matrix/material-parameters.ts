import {
  type Design,
  type DielectricLayer,
  findLibraryMaterial,
  findMaterial,
  listLibraryMaterials,
  type Material,
  type Place,
} from '@/lib/engine'
import { capitalise } from '@/lib/engine/units'
import {
  choiceParameter,
  listStated,
  type Measured,
  type Measurement,
  makeChoices,
  numberParameter,
  type TradeParameter,
} from './parameter'

/** A library material by its id, one of the design's own by the sheet it is called out by. */
export function nameMaterial(design: Design, materialId: string): string {
  if (findLibraryMaterial(materialId) !== null) return materialId
  const own = findMaterial(design, materialId)
  return own === null || own.specification === '' ? materialId : own.specification
}

function materialsOf(
  key: string,
  group: TradeParameter['group'],
  question: string,
  kind: DielectricLayer['kind'],
  what: string,
  of: readonly Material['kind'][],
): TradeParameter {
  return choiceParameter({
    key,
    group,
    name: `${capitalise(what)} material`,
    question,
    isOpen: true,
    choices: listLibraryMaterials()
      .filter((material) => of.includes(material.kind))
      .map(({ id, name: called }) => ({ value: id, name: called })),
    measuredAs: `material of each ${what}`,
    measure: ({ design }) =>
      listStated(
        'one-of',
        design.construction.layers.filter((layer): layer is DielectricLayer => layer.kind === kind),
        (layer) => ({
          value: nameMaterial(design, layer.materialId),
          place: { kind: 'layer', id: layer.id, name: layer.name },
          foilUm: null,
        }),
        `the construction has no ${what}`,
        `no ${what} states its material`,
      ),
  })
}

const GROUP = 'Materials'

export const MATERIAL_PARAMETERS: readonly TradeParameter[] = [
  materialsOf('base-film-material', GROUP, 'Which base films are worked?', 'base-film', 'base film', ['polymer-film']),
  materialsOf('coverlay-material', GROUP, 'Which coverlay films are worked?', 'coverlay-film', 'coverlay film', [
    'polymer-film',
  ]),
  materialsOf('adhesive-material', GROUP, 'Which adhesives are worked?', 'adhesive', 'adhesive', ['adhesive']),
  materialsOf('bondply-material', GROUP, 'Which bondplies are worked?', 'bondply', 'bondply', [
    'adhesive',
    'prepreg',
    'polymer-film',
  ]),
  materialsOf('prepreg-material', GROUP, 'Which no-flow prepregs are worked?', 'no-flow-prepreg', 'no-flow prepreg', [
    'prepreg',
  ]),
  materialsOf(
    'rigid-laminate-material',
    GROUP,
    'Which rigid laminates are worked?',
    'rigid-laminate',
    'rigid laminate',
    ['rigid-laminate'],
  ),
  materialsOf('solder-mask-material', GROUP, 'Which solder masks are worked?', 'solder-mask', 'solder mask', [
    'solder-mask',
  ]),
  materialsOf('shield-material', GROUP, 'Which shields are worked?', 'shield-film', 'shield film', ['shield-film']),
  materialsOf('stiffener-material', 'Stiffeners', 'Of what are stiffeners made?', 'stiffener', 'stiffener', [
    'rigid-laminate',
    'polymer-film',
    'metal-sheet',
  ]),
]

const inBrief = (value: number | string | null, name: string, unknown: string): Measurement => {
  const place: Place = { kind: 'brief', id: 'brief', name }
  return value === null
    ? { kind: 'unknown', reason: unknown }
    : { kind: 'values', values: [{ value, place, foilUm: null }] }
}

export const BRIEF_PARAMETERS: readonly TradeParameter[] = [
  choiceParameter({
    key: 'surface-finish',
    group: 'Finish and class',
    name: 'Surface finish',
    question: 'Which surface finishes are offered?',
    choices: makeChoices({
      'immersion-gold-over-electroless-nickel': 'immersion gold over electroless nickel',
      'immersion-gold-over-palladium-nickel': 'immersion gold over palladium and nickel',
      'electroplated-nickel-gold': 'electroplated nickel and gold',
      'immersion-tin': 'immersion tin',
      'immersion-silver': 'immersion silver',
      'organic-solderability-preservative': 'organic solderability preservative',
      'hot-air-solder-levelled': 'hot-air solder levelled',
      none: 'none',
    }),
    measuredAs: 'surface finish of the brief',
    measure: ({ design }: Measured) =>
      inBrief(design.brief.surfaceFinish, 'Surface finish', 'the brief states no surface finish'),
  }),
  choiceParameter({
    key: 'performance-class',
    isNeed: true,
    group: 'Finish and class',
    name: 'Performance class',
    question: 'To which performance classes are parts built?',
    choices: makeChoices({ 'class-1': 'class 1', 'class-2': 'class 2', 'class-3': 'class 3' }),
    measuredAs: 'performance class of the brief',
    measure: ({ design }) =>
      inBrief(design.brief.performanceClass, 'Performance class', 'the brief states no performance class'),
  }),
  choiceParameter({
    key: 'circuit-type',
    group: 'Finish and class',
    name: 'Circuit type',
    question: 'Which construction types are built?',
    choices: makeChoices({
      'type-1': 'type 1',
      'type-2': 'type 2',
      'type-3': 'type 3',
      'type-4': 'type 4',
      'type-5': 'type 5',
    }),
    measuredAs: 'construction type of the brief (IPC-6013)',
    measure: ({ design }) =>
      inBrief(design.brief.circuitType, 'Construction type', 'the brief states no construction type'),
  }),
  choiceParameter({
    key: 'panel-form',
    group: 'Finish and class',
    name: 'Delivery form',
    question: 'In which forms are parts delivered?',
    choices: makeChoices({
      'single-parts': 'single parts',
      'assembly-arrays': 'assembly arrays',
      'fabricator-decides': 'as the fabricator decides',
    }),
    measuredAs: 'panel form of the brief',
    measure: ({ design }) => inBrief(design.brief.panelForm, 'Panel form', 'the brief states no panel form'),
  }),
  numberParameter({
    key: 'operating-temperature',
    isNeed: true,
    group: 'Finish and class',
    name: 'Operating temperature, maximum',
    question: 'Up to which operating temperature is the build qualified?',
    unit: 'degC',
    direction: 'larger-is-harder',
    verb: 'lower',
    measuredAs: 'highest operating temperature of the brief',
    hint: [85, 125],
    measure: ({ design }) =>
      inBrief(
        design.brief.operatingMaxDegC,
        'Operating temperature',
        'the brief states no highest operating temperature',
      ),
  }),
]
