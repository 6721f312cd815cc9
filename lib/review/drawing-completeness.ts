import {
  type Bend,
  BRIEF_FIELDS,
  type Brief,
  callByName,
  type Design,
  findMaterial,
  type Layer,
  withNetClasses,
  type Zone,
} from '@/lib/engine'
import { getItem } from '@/lib/engine/catalogue'
import type { DrawingGap, DrawingGapSeverity } from './drawing-gap'
import { findPlanGaps } from './plan-gaps'

type BriefQuestion = readonly [
  field: AskedField,
  /** The item that asks the same, whose severity counts here too; a severity of its own where none does. */
  severity: { readonly item: string } | DrawingGapSeverity,
  applies?: (brief: Brief) => boolean,
]

/** Fields of the brief with a question that the drawing has to answer. */
type AskedField = {
  [K in keyof typeof BRIEF_FIELDS]: (typeof BRIEF_FIELDS)[K] extends { readonly question: string } ? K : never
}[keyof typeof BRIEF_FIELDS]

const isSoldered = (brief: Brief) => brief.solderedAssembly !== false

const BRIEF_QUESTIONS: readonly BriefQuestion[] = [
  ['partNumber', 'major'],
  ['performanceClass', { item: 'performance-class' }],
  ['circuitType', { item: 'circuit-type' }],
  ['installationUses', { item: 'bend-use' }],
  // Its item asks about bends alone; without a finish nothing can be plated.
  ['surfaceFinish', 'blocking'],
  ['toleranceScheme', { item: 'tolerances-given' }],
  ['electricalTest', { item: 'electrical-test' }],
  ['couponTest', { item: 'coupon-test' }],
  ['foldTest', { item: 'fold-test' }],
  ['panelForm', { item: 'panel-form' }],
  ['operatingMinDegC', { item: 'operating-temperature' }],
  ['operatingMaxDegC', { item: 'operating-temperature' }],
  ['solderedAssembly', 'minor'],
  ['bakeBeforeAssembly', { item: 'floor-life' }, isSoldered],
  ['registrationCriticalFeatures', { item: 'registration-features' }],
  ['packingAndHandling', { item: 'packing' }],
  ['whoToAsk', { item: 'contact-person' }],
]

const SEVERITY_ORDER: readonly DrawingGapSeverity[] = ['blocking', 'major', 'minor']

/** What a fabricator would still ask, worst first, in the order of the sheet. */
export function findDrawingGaps(design: Design): DrawingGap[] {
  const gaps = [
    ...findBriefGaps(design.brief),
    ...findTermGaps(design),
    ...findConstructionGaps(design),
    ...design.bends.flatMap(findBendGaps),
    ...findStiffenerGaps(design),
    ...findFeatureGaps(design),
    ...findPlanGaps(design),
  ]
  return SEVERITY_ORDER.flatMap((severity) => gaps.filter((gap) => gap.severity === severity))
}

/** The catalogue says how much an item weighs, here as there. What it calls advice does not hold an order up. */
function readSeverity(itemId: string): DrawingGapSeverity {
  const { severity } = getItem(itemId)
  return severity === 'advice' ? 'minor' : severity
}

function isMissing(value: unknown): boolean {
  return value === null || (typeof value === 'string' && value.trim() === '')
}

function findBriefGaps(brief: Brief): DrawingGap[] {
  return BRIEF_QUESTIONS.filter(([field, , applies]) => isMissing(brief[field]) && applies?.(brief) !== false).map(
    ([field, severity]) => ({
      severity: typeof severity === 'string' ? severity : readSeverity(severity.item),
      question: BRIEF_FIELDS[field].question,
      path: ['brief', field],
      target: { tab: 'brief', id: field },
    }),
  )
}

interface TermQuestion {
  readonly item: string
  readonly question: string
  readonly record: 'acceptance' | 'finishTerms' | 'marking'
  readonly fields: readonly string[]
  readonly applies?: (design: Design) => boolean
}

/** One question for what belongs together; it points at the first field that is open. */
const TERM_QUESTIONS: readonly TermQuestion[] = [
  {
    item: 'test-terms',
    question: 'At which voltage is every part tested, and within which limits of continuity and isolation?',
    record: 'acceptance',
    fields: ['testVoltageVolt', 'continuityOhm', 'isolationMegohm'],
    applies: ({ brief }) => brief.electricalTest !== false,
  },
  {
    item: 'finish-terms',
    question: 'To which specification is the surface finish ordered?',
    record: 'finishTerms',
    fields: ['standard'],
    applies: ({ brief }) => brief.surfaceFinish !== 'none',
  },
  {
    item: 'flame-class',
    question: 'Which flame class must the construction have, or is none asked for?',
    record: 'acceptance',
    fields: ['flameClass'],
  },
  {
    item: 'marking',
    question: 'What is marked on the part or its packing?',
    record: 'marking',
    fields: ['partNumber', 'lotOrDate', 'flameMark'],
  },
  {
    item: 'bow-and-twist',
    question: 'How flat must rigid and stiffened areas be?',
    record: 'acceptance',
    fields: ['bowAndTwistPct'],
    applies: ({ construction }) => construction.zones.some(({ kind }) => kind === 'rigid' || kind === 'stiffened'),
  },
  {
    item: 'rework-grade',
    question: 'How many solderings and removals must a land withstand?',
    record: 'acceptance',
    fields: ['solderingsOnCount', 'solderingsOffCount'],
    applies: ({ brief }) => isSoldered(brief),
  },
]

function findTermGaps(design: Design): DrawingGap[] {
  return TERM_QUESTIONS.flatMap(({ item, question, record, fields, applies }): DrawingGap[] => {
    if (applies?.(design) === false) return []
    const terms: Readonly<Record<string, unknown>> = design.brief[record]
    const open = fields.find((field) => isMissing(terms[field]))
    return open === undefined
      ? []
      : [
          {
            severity: readSeverity(item),
            question,
            path: ['brief', record, open],
            target: { tab: 'brief', id: `${record}.${open}` },
          },
        ]
  })
}

function findConstructionGaps(design: Design): DrawingGap[] {
  const { layers, zones } = design.construction
  const onConstruction = (
    severity: DrawingGapSeverity,
    question: string,
    path: readonly (string | number)[],
    id = '',
  ): DrawingGap => ({ severity, question, path: ['construction', ...path], target: { tab: 'construction', id } })
  return [
    ...(layers.length === 0 ? [onConstruction('blocking', 'Which layers make up the part?', ['layers'])] : []),
    ...(zones.length === 0 ? [onConstruction('blocking', 'Which layers are in which zone?', ['zones'])] : []),
    ...findCallOutGaps(design),
    ...layers.flatMap((layer, index) =>
      hasNoTolerance(layer)
        ? [
            onConstruction(
              'minor',
              `What is the thickness tolerance of layer ${index + 1}, ${layer.name}? The design states 0.`,
              ['layers', index, 'tolerancePlusUm'],
              layer.id,
            ),
          ]
        : [],
    ),
    ...zones.flatMap((zone, index) => findZoneGaps(zone, index, onConstruction)),
  ]
}

function hasNoTolerance(layer: Layer): boolean {
  return layer.kind !== 'unbonded-gap' && layer.tolerancePlusUm === 0 && layer.toleranceMinusUm === 0
}

function findZoneGaps(
  zone: Zone,
  index: number,
  onConstruction: (severity: DrawingGapSeverity, question: string, path: (string | number)[], id: string) => DrawingGap,
): DrawingGap[] {
  const gap = (field: keyof Zone, severity: DrawingGapSeverity, question: string) =>
    zone[field] === null ? [onConstruction(severity, question, ['zones', index, field], zone.id)] : []
  return [
    ...gap('lengthMm', 'major', `How long is ${callByName('zone', zone.name)}?`),
    ...gap('widthMm', 'major', `How wide is ${callByName('zone', zone.name)}?`),
    ...(zone.kind === 'finger'
      ? gap(
          'connectorWindow',
          'blocking',
          `What thickness does the connector at ${callByName('zone', zone.name)} accept?`,
        )
      : []),
  ]
}

/** Materials without a specification: one question for each, however many layers are made of it. */
function findCallOutGaps(design: Design): DrawingGap[] {
  const used = new Set(
    design.construction.layers.map((layer) => (layer.kind === 'unbonded-gap' ? '' : layer.materialId)),
  )
  return [...used].flatMap((materialId): DrawingGap[] => {
    const material = findMaterial(design, materialId)
    if (material === null || material === undefined || material.specification.trim() !== '') return []
    const at = design.materials.findIndex(({ id }) => id === materialId)
    return [
      {
        severity: 'blocking',
        question: `To which specification is ${material.name} ordered?`,
        path: ['materials', at, 'specification'],
        target: { tab: 'construction', id: '' },
      },
    ]
  })
}

function findBendGaps(bend: Bend, index: number): DrawingGap[] {
  const gap = (field: keyof Bend, severity: DrawingGapSeverity, question: string): DrawingGap[] =>
    bend[field] === null
      ? [{ severity, question, path: ['bends', index, field], target: { tab: 'bends', id: bend.id } }]
      : []
  return [
    ...gap(
      'use',
      'blocking',
      `Is ${callByName('bend', bend.name)} folded once, flexed to install, or flexed in service?`,
    ),
    ...(bend.use === 'dynamic'
      ? [
          ...gap('requiredCycles', 'blocking', `How many cycles must ${callByName('bend', bend.name)} withstand?`),
          ...findFlexTestGaps(bend, index),
        ]
      : []),
    ...gap('radiusHeldBy', 'minor', `What holds the radius of ${callByName('bend', bend.name)}?`),
    ...(bend.radiusHeldBy === 'between-faces'
      ? gap('faceGapMm', 'major', `How far apart are the faces that hold ${callByName('bend', bend.name)}?`)
      : []),
    ...((bend.twistDeg ?? 0) > 0
      ? gap('twistLengthMm', 'major', `Over what length does the part twist at ${callByName('bend', bend.name)}?`)
      : []),
    ...gap('distanceToRigidMm', 'major', `How far is ${callByName('bend', bend.name)} from the rigid edge?`),
    ...gap(
      'strainReliefAtTransition',
      'minor',
      `Is there strain relief at the rigid edge beside ${callByName('bend', bend.name)}?`,
    ),
  ]
}

/** A drawing for continuous flexing states rate, travel, mandrel and points of application (MIL-PRF-50884F, use B). */
function findFlexTestGaps({ id, name, flexTest }: Bend, index: number): DrawingGap[] {
  const questions: readonly [keyof Bend['flexTest'], string][] = [
    ['cyclesPerMinute', `At how many cycles per minute is ${callByName('bend', name)} tested?`],
    ['travelMm', `What is the test travel of ${callByName('bend', name)}?`],
    ['mandrelDiameterMm', `On what mandrel is ${callByName('bend', name)} tested?`],
    ['pointsOfApplication', `Where is the part held and moved when ${callByName('bend', name)} is tested?`],
  ]
  return questions.flatMap(([field, question]) =>
    isMissing(flexTest[field])
      ? [{ severity: 'major', question, path: ['bends', index, 'flexTest', field], target: { tab: 'bends', id } }]
      : [],
  )
}

/** Kinds that hold a stiffener. */
const HOLDING_KINDS: ReadonlySet<string> = new Set(['adhesive', 'bondply', 'no-flow-prepreg'])

function findStiffenerGaps({ construction, features }: Design): DrawingGap[] {
  const typed = features.stiffeners.flatMap((stiffener, index) => {
    const gap = (field: keyof typeof stiffener, severity: DrawingGapSeverity, question: string): DrawingGap[] =>
      stiffener[field] === null
        ? [
            {
              severity,
              question,
              path: ['features', 'stiffeners', index, field],
              target: { tab: 'features', id: stiffener.id },
            },
          ]
        : []
    return [
      ...gap('purpose', 'minor', `What is ${callByName('stiffener', stiffener.name)} for?`),
      ...gap(
        'coverlayOverlapMm',
        'major',
        `How far does ${callByName('stiffener', stiffener.name)} overlap the end of the coverlay?`,
      ),
      ...gap('nearestBend', 'minor', `How far is ${callByName('stiffener', stiffener.name)} from the nearest bend?`),
    ]
  })
  const described = new Set(features.stiffeners.map(({ layerId }) => layerId))
  const bare = construction.layers.flatMap((layer, index): DrawingGap[] => {
    if (layer.kind !== 'stiffener') return []
    const gaps: DrawingGap[] = []
    if (!described.has(layer.id)) {
      gaps.push({
        severity: 'major',
        question: `Where does stiffener ${callByName('layer', layer.name)} begin and end, and what is it for?`,
        path: ['features', 'stiffeners'],
        target: { tab: 'features', id: '' },
      })
    }
    if (!isHeld(construction, layer.id)) {
      gaps.push({
        severity: 'major',
        question: `What bonds stiffener ${callByName('layer', layer.name)}? There is no adhesive next to it.`,
        path: ['construction', 'layers', index],
        target: { tab: 'construction', id: layer.id },
      })
    }
    return gaps
  })
  return [...typed, ...bare]
}

/** Does something that bonds lie next to the layer in every zone that has it? */
function isHeld({ layers, zones }: Design['construction'], layerId: string): boolean {
  return zones.every(({ presence }) => {
    const present = new Set(presence.map((each) => each.layerId))
    if (!present.has(layerId)) return true
    const here = layers.filter(({ id }) => present.has(id))
    const at = here.findIndex(({ id }) => id === layerId)
    return [here[at - 1], here[at + 1]].some((layer) => layer !== undefined && HOLDING_KINDS.has(layer.kind))
  })
}

function findFeatureGaps(design: Design): DrawingGap[] {
  const { construction, features } = design
  const onFeatures = (
    severity: DrawingGapSeverity,
    question: string,
    path: readonly (string | number)[],
    id = '',
  ): DrawingGap => ({ severity, question, path: ['features', ...path], target: { tab: 'features', id } })
  // Designs stored before there were outlines do not have the field.
  const outline = features.outline
  const conductorCount = construction.layers.filter(({ kind }) => kind === 'conductor').length
  const hasCoverlay = construction.layers.some(({ kind }) => kind === 'coverlay-film')
  return [
    ...(conductorCount > 1 && features.holes.length === 0
      ? [onFeatures('minor', 'Which holes join the conductor layers, and how large are their lands?', ['holes'])]
      : []),
    ...features.holes.flatMap((hole, index) => {
      const ask = (field: keyof typeof hole, severity: DrawingGapSeverity, question: string) =>
        hole[field] === null ? [onFeatures(severity, question, ['holes', index, field], hole.id)] : []
      return [
        ...ask('plated', 'major', `Is ${hole.name} plated?`),
        ...ask('drillMm', 'major', `What is the drill diameter of ${hole.name}?`),
        ...(hole.plated === true && (hole.fromLayerId === null || hole.toLayerId === null)
          ? ask(
              hole.fromLayerId === null ? 'fromLayerId' : 'toLayerId',
              'major',
              `Which layers does ${hole.name} join?`,
            )
          : []),
        ...(hole.plated === true ? ask('filling', 'major', `Is ${hole.name} open, covered or filled?`) : []),
        ...(hole.plated === true ? ask('landMm', 'major', `How large is the land of ${hole.name}?`) : []),
        ...(hole.plated === true
          ? ask('wallPlatingUm', 'minor', `How much copper is on the wall of ${hole.name}?`)
          : []),
      ]
    }),
    ...features.outlineCorners.flatMap((corner, index) =>
      corner.insideRadiusMm === null
        ? [
            onFeatures(
              'minor',
              `What is the radius of inside corner ${corner.name}?`,
              ['outlineCorners', index, 'insideRadiusMm'],
              corner.id,
            ),
          ]
        : [],
    ),
    ...(hasCoverlay && features.coverlayOpenings.length === 0
      ? [onFeatures('minor', 'Where is the coverlay open?', ['coverlayOpenings'])]
      : []),
    ...features.coverlayOpenings.flatMap((opening, index) => [
      ...(opening.method === null
        ? [
            onFeatures(
              'minor',
              `Is the coverlay opening ${opening.name} drilled, punched or cut by laser?`,
              ['coverlayOpenings', index, 'method'],
              opening.id,
            ),
          ]
        : []),
      ...(opening.webMm === null
        ? [
            onFeatures(
              'minor',
              `How wide is the narrowest web of coverlay beside ${opening.name}?`,
              ['coverlayOpenings', index, 'webMm'],
              opening.id,
            ),
          ]
        : []),
    ]),
    ...withNetClasses(design).features.conductors.flatMap((conductor, index) =>
      conductor.impedanceOhm !== null && conductor.spaceMm === null
        ? [
            onFeatures(
              'major',
              `What conductor space gives the impedance of ${conductor.name}?`,
              ['conductors', index, 'spaceMm'],
              conductor.id,
            ),
          ]
        : [],
    ),
    ...(features.copperToOutlineMm === null
      ? [onFeatures('minor', 'How close is copper to the outline?', ['copperToOutlineMm'])]
      : []),
    ...(outline === null
      ? [onFeatures('major', 'What is the outline of the part in the flat?', ['outline'])]
      : outline.rollingDirection === null
        ? [onFeatures('minor', 'Along which axis of the part is the foil rolled?', ['outline', 'rollingDirection'])]
        : []),
    ...(features.outlineCorners.length === 0
      ? [onFeatures('minor', 'What is the radius of the inside corners of the outline?', ['outlineCorners'])]
      : []),
  ]
}
