import { requireNumber } from '../numerics'
import type { SourceKey } from '../sources'

/** The words of the tables: bent once and left, bent now and then, bent in service. */
export type RatioUse = 'static' | 'occasional' | 'dynamic'
export type RatioLayers = 'single' | 'double' | 'multilayer'

/** Ratio of inside radius to thickness: one figure or a spread, `advised against`, or null where the table is silent. */
export type RatioEntry = readonly [low: number, high: number] | 'advised against' | null

export interface RatioTable {
  id: string
  name: string
  source: SourceKey
  note: string
  entries: Record<RatioLayers, Record<RatioUse, RatioEntry>>
}

const one = (ratio: number): RatioEntry => [ratio, ratio]
const silent = { static: null, occasional: null, dynamic: null } as const

/**
 * Ratio rules in circulation. They differ by a factor of two to five, so the one in use is always named and a
 * workspace may choose another. The first is the default: it alone has a figure for every use.
 */
export const RATIO_TABLES: readonly RatioTable[] = [
  {
    id: 'attributed-to-ipc-2223',
    name: 'Table attributed to IPC-2223',
    source: 'ratioAttributedToIpc2223',
    note: 'Multilayer circuits in dynamic use are advised against.',
    entries: {
      single: { static: one(10), occasional: one(20), dynamic: one(100) },
      double: { static: one(10), occasional: one(20), dynamic: one(150) },
      multilayer: { static: one(20), occasional: one(50), dynamic: 'advised against' },
    },
  },
  {
    id: 'trade-article-2019',
    name: 'Typical minimum, trade article (2019)',
    source: 'ratioTradeArticle2019',
    note: 'Given as what guidelines typically ask for.',
    entries: {
      single: { ...silent, static: one(6) },
      double: { ...silent, static: one(10) },
      multilayer: { ...silent, static: one(20) },
    },
  },
  {
    id: 'mailing-list-2002',
    name: 'Engineers on a mailing list (2002)',
    source: 'ratioMailingList2002',
    note: 'For 35 um copper and 25 um films.',
    entries: {
      single: { ...silent, static: [3, 6] },
      double: { ...silent, static: [6, 10] },
      multilayer: { ...silent, static: [15, 20] },
    },
  },
  {
    id: 'mechanical-rules',
    name: 'Fabricator guide on mechanical rules',
    source: 'ratioGuideMechanical',
    note: 'Single-sided only; 10 is said to have been pushed to 5.',
    entries: { single: { static: one(10), occasional: null, dynamic: one(100) }, double: silent, multilayer: silent },
  },
  {
    id: 'bend-radius-guide',
    name: 'Fabricator guide on bend radius',
    source: 'ratioGuideArticle',
    note: 'Static bends only.',
    entries: {
      single: { ...silent, static: [3, 6] },
      double: { ...silent, static: [8, 10] },
      multilayer: { ...silent, static: [10, 15] },
    },
  },
  {
    id: 'foil-guide-2017',
    name: 'Fabricator guide on foil types (2017)',
    source: 'ratioRolledFoil2017',
    note: '10 by the book, 7 in the industry, 5 with good materials.',
    entries: { single: { ...silent, static: [5, 10] }, double: silent, multilayer: silent },
  },
]

/** Id of the table in use where nobody chose another. */
export const DEFAULT_RATIO_TABLE_ID = 'attributed-to-ipc-2223'

/** Null for an id that no table has. */
export function findRatioTable(id: string): RatioTable | null {
  return RATIO_TABLES.find((table) => table.id === id) ?? null
}

/** Which column a count of conductor layers reads. Throws RangeError below 1. */
export function ratioLayersFor(conductorLayerCount: number): RatioLayers {
  requireNumber('conductorLayerCount', conductorLayerCount, { atLeast: 1 })
  if (conductorLayerCount < 2) return 'single'
  return conductorLayerCount < 3 ? 'double' : 'multilayer'
}

export type RatioRadius =
  /** `requiredRatio` is the upper end of the table's spread, the careful one. */
  | { kind: 'stated'; requiredRatio: number; lowestRatio: number; minInsideRadiusMm: number }
  | { kind: 'advised against' }
  | { kind: 'not stated' }

/**
 * Minimum inside radius by a ratio rule.
 *
 * Model    R = n t, t the total thickness in the bend
 * @param conductorLayerCount  >= 1
 * @param totalThicknessUm     > 0
 * @throws  RangeError naming the argument
 * Source   the table's own; check values in test/standards/bending
 */
export function computeRatioRadius({
  table,
  use,
  conductorLayerCount,
  totalThicknessUm,
}: {
  table: RatioTable
  use: RatioUse
  conductorLayerCount: number
  totalThicknessUm: number
}): RatioRadius {
  requireNumber('totalThicknessUm', totalThicknessUm, { above: 0, atMost: 1e6, unit: 'um' })
  const entry = table.entries[ratioLayersFor(conductorLayerCount)][use]
  if (entry === null) return { kind: 'not stated' }
  if (entry === 'advised against') return { kind: 'advised against' }
  const [lowestRatio, requiredRatio] = entry
  return { kind: 'stated', requiredRatio, lowestRatio, minInsideRadiusMm: (requiredRatio * totalThicknessUm) / 1000 }
}

/**
 * Strain that a ratio of radius to thickness means at the outer surface of a homogeneous sheet.
 *
 * Model    eps = 1 / (2 n + 1), n = R_i / t, from (t / 2) / (R_i + t / 2)
 * @param ratio  >= 0
 * @returns per cent; it is the surface, not the copper
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic; check values in test/standards/bending
 * @example 10 gives 4.76, 100 gives 0.498
 */
export function surfaceStrainPctFromRatio(ratio: number): number {
  return 100 / (2 * requireNumber('ratio', ratio, { atLeast: 0 }) + 1)
}
