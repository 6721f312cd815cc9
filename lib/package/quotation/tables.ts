import { formatTolerance } from '@/lib/drawing'
import {
  asComputed,
  asCount,
  type ComputedFigure,
  countOf,
  digitsAsComputed,
  digitsAsEntered,
  NO_FIGURE,
} from '@/lib/engine/units'
import { DRAWING_GAP_WORDS, nameThreadKind } from '@/lib/review'
import type { OpenPoint, QuotationRequest } from './schema'

/** A column; figures keep their numbers, and are written by their rule where people read them. */
interface QuotationColumn {
  readonly key: string
  readonly label: string
  readonly figure?: ComputedFigure | 'entered' | 'count'
  /** Key of the column below whose text it is set where there is little room. */
  readonly under?: string
}

export interface QuotationTable {
  readonly title: string
  readonly columns: readonly QuotationColumn[]
  /** Null is not known, or there is none. */
  readonly rows: readonly (readonly (string | number | null)[])[]
  /** Said in place of rows where there are none, or below them; empty for nothing. */
  readonly note: string
}

const MM2_PER_CM2 = 100

/** What a request says of itself, as label and text. */
export function listQuotationFacts(request: QuotationRequest): (readonly [label: string, text: string])[] {
  const stated = (text: string | null) => (text === null || text.trim() === '' ? 'not stated' : text)
  return [
    ['From', request.contact === '' ? request.from : `${request.from}; questions to ${request.contact}`],
    ['To', request.to],
    ['Part', `${stated(request.partNumber)}, revision ${request.revision}: ${request.design}`],
    ['Stage of the review', request.stage],
    ['Written on', request.writtenOn],
    ['Needed on', stated(request.neededOn)],
    ['Layout freezes on', stated(request.layoutFreezeOn)],
    ['Quantity', request.quantityPerYear === null ? 'not stated' : `${asCount(request.quantityPerYear)} per year`],
    ...request.requirements.map(({ label, text }) => [label, text] as const),
    ['Outline', describeOutline(request)],
  ]
}

const BASIS_WORDS = {
  drawn: 'as drawn in plan, cut-outs taken off',
  stated: 'as stated',
  zones: 'from the sizes of the zones',
} as const

const DIRECTION_WORDS = { 'along-x': 'along x', 'along-y': 'along y' } as const

function describeOutline({ outline, outlineBecause }: QuotationRequest): string {
  if (outline === null) return `not known. ${outlineBecause}`
  const { lengthMm, widthMm, areaMm2, basis, rollingDirection, note } = outline
  const size = `${asComputed(lengthMm, 'sizeMm')} × ${asComputed(widthMm, 'sizeMm')}, ${digitsAsComputed(areaMm2 / MM2_PER_CM2, 'areaCm2')} cm², ${BASIS_WORDS[basis]}`
  const rolled = rollingDirection === null ? '' : `; foil rolled ${DIRECTION_WORDS[rollingDirection]}`
  return `${size}${rolled}${note === '' ? '' : `. ${note}`}`
}

/** Layers, zones, materials, panel, open points. */
type QuotationTables = readonly [QuotationTable, QuotationTable, QuotationTable, QuotationTable, QuotationTable]

/** All tables of a request in their order; page, PDF and workbook set the same ones. */
export function listQuotationTables(request: QuotationRequest): QuotationTables {
  return [
    makeLayerTable(request),
    makeZoneTable(request),
    makeMaterialTable(request),
    makePanelTable(request),
    makeOpenPointTable(request),
  ]
}

function makeLayerTable({ layers }: QuotationRequest): QuotationTable {
  return {
    title: 'Layers, top face first',
    columns: [
      { key: 'position', label: 'No.', figure: 'count' },
      { key: 'designation', label: 'Conductor layer' },
      { key: 'name', label: 'Name' },
      { key: 'kind', label: 'Kind' },
      { key: 'material', label: 'Material' },
      { key: 'specification', label: 'Specification', under: 'material' },
      { key: 'thickness', label: 'As bought, µm', figure: 'entered' },
      { key: 'tolerance', label: 'Tolerance, µm' },
      { key: 'plating', label: 'Plating' },
      { key: 'zones', label: 'In zones' },
    ],
    rows: layers.map((layer) => [
      layer.position,
      layer.designation,
      layer.name,
      layer.kind,
      layer.material,
      layer.specification,
      layer.thicknessUm,
      layer.tolerancePlusUm === null || layer.toleranceMinusUm === null
        ? ''
        : formatTolerance(layer.tolerancePlusUm, layer.toleranceMinusUm, digitsAsEntered),
      layer.plating,
      layer.zones.join(', '),
    ]),
    note: layers.length === 0 ? 'The construction has no layers.' : '',
  }
}

const AREA_WORDS = { drawn: 'drawn', stated: 'length × width', unknown: 'not known' } as const

function makeZoneTable({ zones }: QuotationRequest): QuotationTable {
  return {
    title: 'Zones',
    columns: [
      { key: 'zone', label: 'Zone' },
      { key: 'kind', label: 'Kind' },
      { key: 'length', label: 'Length, mm', figure: 'sizeMm' },
      { key: 'width', label: 'Width, mm', figure: 'sizeMm' },
      { key: 'area', label: 'Area, cm²', figure: 'areaCm2' },
      { key: 'basis', label: 'Area from' },
      { key: 'finished', label: 'Finished thickness, µm', figure: 'thicknessUm' },
      { key: 'low', label: 'Worst case from, µm', figure: 'thicknessUm' },
      { key: 'high', label: 'to, µm', figure: 'thicknessUm' },
    ],
    rows: zones.map(({ name, kind, lengthMm, widthMm, areaMm2, areaBasis, finishedUm }) => [
      name,
      kind,
      lengthMm,
      widthMm,
      areaMm2 === null ? null : areaMm2 / MM2_PER_CM2,
      AREA_WORDS[areaBasis],
      finishedUm?.nominal ?? null,
      finishedUm?.low ?? null,
      finishedUm?.high ?? null,
    ]),
    note: zones.length === 0 ? 'The construction has no zones.' : '',
  }
}

function makeMaterialTable({ materials, quantityPerYear }: QuotationRequest): QuotationTable {
  return {
    title: 'Materials, with the area of the zones that they lie in',
    columns: [
      { key: 'description', label: 'Material as bought' },
      { key: 'layers', label: 'Layers' },
      { key: 'zones', label: 'In zones' },
      { key: 'area', label: 'Per part, cm²', figure: 'areaCm2' },
      { key: 'year', label: 'Per year, m²', figure: 'areaM2' },
    ],
    rows: materials.map(({ description, layers, zones, areaPerPartMm2, areaPerYearM2, because }) => [
      description,
      layers.join(', '),
      because === '' ? zones.join(', ') : [zones.join(', '), because].filter((text) => text !== '').join('. '),
      areaPerPartMm2 === null ? null : areaPerPartMm2 / MM2_PER_CM2,
      areaPerYearM2,
    ]),
    note:
      materials.length === 0
        ? 'The construction has no materials.'
        : `Before anything is etched or cut out, without the rest of the panel.${quantityPerYear === null ? ' The brief states no quantity per year.' : ''}`,
  }
}

function makePanelTable({ panel }: QuotationRequest): QuotationTable {
  const { formats, panelsPerYear, sheetAreaPerYearM2, yieldNote, because } = panel
  const perYear =
    panelsPerYear === null
      ? ''
      : `${countOf(panelsPerYear, 'panel')} of the format with the lowest cost for the parts of a year, ${digitsAsComputed(sheetAreaPerYearM2, 'areaM2')} m² of each sheet that lies on the whole panel. ${yieldNote}`
  return {
    title: 'Panel',
    columns: [
      { key: 'format', label: 'Panel format' },
      { key: 'width', label: 'Width, mm', figure: 'entered' },
      { key: 'height', label: 'Height, mm', figure: 'entered' },
      { key: 'parts', label: 'Parts per panel', figure: 'count' },
      { key: 'used', label: 'Share used, %', figure: 'sharePct' },
      { key: 'perPart', label: 'Panel per part, cm²', figure: 'areaCm2' },
      { key: 'cheapest', label: 'Lowest cost' },
    ],
    rows: formats.map((format) => [
      format.name,
      format.widthMm,
      format.heightMm,
      format.partsPerPanel,
      100 * format.usedFraction,
      format.panelAreaPerPartMm2 === null ? null : format.panelAreaPerPartMm2 / MM2_PER_CM2,
      format.isCheapest ? 'yes' : '',
    ]),
    note: [because, perYear].filter((text) => text !== '').join(' '),
  }
}

function makeOpenPointTable({ openPoints }: QuotationRequest): QuotationTable {
  return {
    title: 'Open points',
    columns: [
      { key: 'point', label: 'Point' },
      { key: 'pointKind', label: 'Kind' },
      { key: 'state', label: 'State' },
      { key: 'due', label: 'Due' },
    ],
    rows: openPoints.map((point) => [
      point.about === '' ? point.text : `${point.text} (on ${point.about})`,
      nameOpenPoint(point),
      point.state,
      point.dueOn ?? '',
    ]),
    note: openPoints.length === 0 ? 'None of the fields that are checked here is empty, and no question is open.' : '',
  }
}

function nameOpenPoint({ kind, severity }: OpenPoint): string {
  return severity === null ? nameThreadKind(kind) : DRAWING_GAP_WORDS[severity]
}

/** A cell as people read it; a number by the rule of its column. */
export function writeQuotationCell({ figure }: QuotationColumn, value: string | number | null): string {
  if (value === null) return NO_FIGURE
  if (typeof value === 'string') return value
  if (figure === 'count') return asCount(value)
  return figure === undefined || figure === 'entered' ? digitsAsEntered(value) : digitsAsComputed(value, figure)
}
