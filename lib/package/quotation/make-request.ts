import { formatDesignation, nameConductorLayers } from '@/lib/drawing'
import {
  BRIEF_FIELDS,
  CAUTIONS,
  type Design,
  type Evaluation,
  findMaterial,
  getChoiceWord,
  LAYER_FIELDS,
  type Layer,
  nameLayerKind,
  ZONE_FIELDS,
} from '@/lib/engine'
import { asComputed, asEntered } from '@/lib/engine/units'
import {
  type Estimate,
  FAMILY_NAMES,
  findConstructionFamily,
  measureMaterials,
  measureOutline,
  measureZoneAreas,
} from '@/lib/fabrication'
import { callAnchor, findDrawingGaps, formatFieldValue, STAGE_LABELS, type Stage } from '@/lib/review'
import type { OpenPoint, QuotationRequest } from './schema'

/** On every page and file: what nobody may take the document for. */
export const QUOTATION_STATEMENT =
  'For quotation only. This is not a release: do not build from it. Parts are built from a released package alone.'

const MM2_PER_M2 = 1e6

/** A thread that the fabricator can read, as far as a quotation has to know of it. */
interface QuotationThread {
  readonly kind: string
  readonly state: 'open' | 'answered' | 'closed'
  readonly title: string
  readonly anchorKind: string
  readonly anchorLabel: string
  readonly dueOn: string | null
}

interface QuotationSource {
  readonly design: Design
  /** Null while nothing was evaluated. */
  readonly zones: Evaluation['zones'] | null
  readonly project: string
  readonly revision: string
  readonly stage: Stage
  /** Who asks, and whom. */
  readonly from: string
  readonly to: string
  /** YYYY-MM-DD */
  readonly today: string
  readonly estimate: Estimate
  /** Does the person for whom it is made get the fabricator's panel formats? */
  readonly isPanelShown: boolean
  /** Those that this fabricator can read; whatever the team keeps to itself stays out. */
  readonly threads: readonly QuotationThread[]
}

/** Everything that a request for quotation says, worked out once; page and files only write it down. */
export function makeQuotationRequest(source: QuotationSource): QuotationRequest {
  const { design } = source
  const { brief } = design
  const outline = measureOutline(design)
  return {
    format: 'bendworthy-request-for-quotation',
    formatVersion: 1,
    statement: QUOTATION_STATEMENT,
    cautions: [...CAUTIONS],
    project: source.project,
    revision: source.revision,
    stage: STAGE_LABELS[source.stage],
    design: design.name,
    partNumber: brief.partNumber,
    from: source.from,
    contact: brief.whoToAsk,
    to: source.to,
    writtenOn: source.today,
    manufacturingReviewOn: brief.manufacturingReviewDate,
    layoutFreezeOn: brief.layoutFreezeDate,
    neededOn: brief.needDate,
    quantityPerYear: brief.quantityPerYear,
    requirements: listRequirements(design),
    layers: listLayers(design),
    zones: listZones(source),
    materials: listMaterials(design),
    outline: outline.ok ? { ...outline.outline, verticesMm: outline.outline.verticesMm.map(([x, y]) => [x, y]) } : null,
    outlineBecause: outline.ok ? '' : outline.reason,
    panel: makePanel(source),
    openPoints: listOpenPoints(source),
  }
}

/** What a price hangs on beside the layers; what nobody stated is among the open points, not here. */
const REQUIREMENTS = [
  'performanceClass',
  'circuitType',
  'installationUses',
  'surfaceFinish',
  'panelForm',
  'electricalTest',
  'couponTest',
  'foldTest',
] as const satisfies readonly (keyof typeof BRIEF_FIELDS)[]

function listRequirements(design: Design): QuotationRequest['requirements'] {
  const family = findConstructionFamily(design)
  const built = family === null ? [] : [{ label: 'Construction', text: FAMILY_NAMES[family] }]
  return [
    ...built,
    ...REQUIREMENTS.flatMap((field) => {
      const value: unknown = design.brief[field]
      if (value === null || (Array.isArray(value) && value.length === 0)) return []
      return [{ label: BRIEF_FIELDS[field].label, text: formatFieldValue(value, BRIEF_FIELDS[field]) }]
    }),
  ]
}

function listLayers(design: Design): QuotationRequest['layers'] {
  const { layers, zones } = design.construction
  const designations = nameConductorLayers(design.construction)
  return layers.map((layer, index) => {
    const designation = designations.get(layer.id)
    const material = layer.kind === 'unbonded-gap' ? null : findMaterial(design, layer.materialId)
    const isAir = layer.kind === 'unbonded-gap'
    return {
      position: index + 1,
      designation: designation === undefined ? '' : formatDesignation(designation),
      name: layer.name,
      kind: nameLayerKind(layer.kind),
      material: material?.name ?? (isAir ? 'air' : layer.materialId),
      specification: material?.specification ?? '',
      thicknessUm: layer.thicknessUm,
      tolerancePlusUm: isAir ? null : layer.tolerancePlusUm,
      toleranceMinusUm: isAir ? null : layer.toleranceMinusUm,
      plating: describePlating(layer),
      zones: zones
        .filter(({ presence }) => presence.some(({ layerId }) => layerId === layer.id))
        .map(({ name }) => name),
    }
  })
}

function describePlating(layer: Layer): string {
  if (layer.kind !== 'conductor') return ''
  const { process, thicknessUm } = layer.plating
  const word = getChoiceWord(LAYER_FIELDS.plating.fields.process, process)
  return process === 'none' ? 'none' : `${word}, ${asEntered(thicknessUm, 'um')}`
}

function listZones({ design, zones }: QuotationSource): QuotationRequest['zones'] {
  const areas = measureZoneAreas(design)
  return design.construction.zones.map((zone) => {
    const area = areas.get(zone.id)
    const found = zones?.find(({ zoneId }) => zoneId === zone.id)
    return {
      name: zone.name,
      kind: getChoiceWord(ZONE_FIELDS.kind, zone.kind),
      lengthMm: area?.lengthMm ?? null,
      widthMm: area?.widthMm ?? null,
      areaMm2: area?.areaMm2 ?? null,
      areaBasis: area?.basis ?? 'unknown',
      finishedUm:
        found === undefined
          ? null
          : { nominal: found.thicknessUm, low: found.worstCaseUm.low, high: found.worstCaseUm.high },
    }
  })
}

function listMaterials(design: Design): QuotationRequest['materials'] {
  const { quantityPerYear } = design.brief
  return measureMaterials(design).map(({ purchase, description, zones, areaMm2, unknownZones }) => {
    const parts = [purchase.layer, ...purchase.foilLayers, ...purchase.adhesiveLayers]
    const ordered = design.construction.layers.filter(({ id }) => parts.some((part) => part.id === id))
    return {
      description,
      layers: ordered.map(({ name }) => name),
      zones: zones.map(({ name }) => name),
      areaPerPartMm2: zones.length === 0 ? null : areaMm2,
      areaPerYearM2:
        areaMm2 === null || zones.length === 0 || quantityPerYear === null
          ? null
          : (areaMm2 * quantityPerYear) / MM2_PER_M2,
      because: zones.length === 0 ? 'It lies in no zone.' : explainUnknown(unknownZones.map(({ name }) => name)),
    }
  })
}

function explainUnknown(names: readonly string[]): string {
  if (names.length === 0) return ''
  return names.length === 1
    ? `Zone ${names[0]} is not drawn and states no length and width.`
    : `Zones ${names.join(', ')} are not drawn and state no length and width.`
}

function makePanel({ estimate, isPanelShown, to }: QuotationSource): QuotationRequest['panel'] {
  const nothing = { formats: [], panelsPerYear: null, sheetAreaPerYearM2: null, yieldNote: '' }
  if (!isPanelShown) return { ...nothing, because: `${to} does not show its panel formats here.` }
  if (!estimate.ok) return { ...nothing, because: estimate.reason }
  const { cost, nested } = estimate
  const formats = nested.map(({ format, nesting }) => ({
    name: format.name,
    widthMm: format.widthMm,
    heightMm: format.heightMm,
    partsPerPanel: nesting.count,
    usedFraction: nesting.utilisationFraction,
    panelAreaPerPartMm2: nesting.count === 0 ? null : (format.widthMm * format.heightMm) / nesting.count,
    isCheapest: format.id === cost?.panel.formatId,
  }))
  const panelCount = cost?.panelCount ?? null
  return {
    formats,
    panelsPerYear: panelCount,
    sheetAreaPerYearM2: panelCount === null || cost === null ? null : panelCount * cost.panel.areaM2,
    yieldNote:
      panelCount === null || cost === null
        ? ''
        : `With a yield of ${asComputed(100 * cost.yieldFraction, 'sharePct')}${cost.usesIllustrativeRates ? ', by an illustrative table of process steps' : ', by the fabricator’s process rates'}.`,
    because: cost === null ? 'The part does not fit on any panel.' : '',
  }
}

const isAsked = (kind: string): kind is 'must-change' | 'engineering-query' =>
  kind === 'must-change' || kind === 'engineering-query'

function nameAnchor(kind: string, label: string): string {
  if (kind === 'revision') return 'the whole revision'
  return kind === 'item' ? `the item “${label}”` : callAnchor(kind, label)
}

/** What the order cannot be placed without, worst first, and what is still talked about. */
function listOpenPoints({ design, threads }: QuotationSource): OpenPoint[] {
  const talked = threads.flatMap(({ kind, state, title, anchorKind, anchorLabel, dueOn }): OpenPoint[] =>
    isAsked(kind) && state !== 'closed'
      ? [
          {
            kind,
            severity: null,
            text: title,
            about: nameAnchor(anchorKind, anchorLabel),
            state,
            dueOn,
          },
        ]
      : [],
  )
  return [
    ...talked.filter(({ kind }) => kind === 'must-change'),
    ...talked.filter(({ kind }) => kind === 'engineering-query'),
    ...findDrawingGaps(design).map(
      ({ severity, question }): OpenPoint => ({
        kind: 'gap',
        severity,
        text: question,
        about: '',
        state: 'open',
        dueOn: null,
      }),
    ),
  ]
}
