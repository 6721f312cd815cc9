import type { SourceKey } from '../sources'

/** Internal: not through-hole plated. External: plated with the holes. */
export type ConductorLocation = 'internal' | 'external'
/** Performance class of the end product. */
export type ProductClass = 1 | 2 | 3

interface FoilRow {
  weightOzPerFt2: number
  nominalFoilUm: number
  minFoilUm: number
  internalReductionUm: number
  externalReductionUm: number
  recalled: boolean
}

/** Foil nominal, foil minimum (10 % less), and the reduction that processing may take, um. */
const FOIL_ROWS: readonly FoilRow[] = [
  {
    weightOzPerFt2: 1 / 8,
    nominalFoilUm: 5.1,
    minFoilUm: 4.6,
    internalReductionUm: 1.5,
    externalReductionUm: 1.5,
    recalled: true,
  },
  {
    weightOzPerFt2: 1 / 4,
    nominalFoilUm: 8.5,
    minFoilUm: 7.7,
    internalReductionUm: 1.5,
    externalReductionUm: 1.5,
    recalled: true,
  },
  {
    weightOzPerFt2: 3 / 8,
    nominalFoilUm: 12,
    minFoilUm: 10.8,
    internalReductionUm: 1.5,
    externalReductionUm: 1.5,
    recalled: true,
  },
  {
    weightOzPerFt2: 1 / 2,
    nominalFoilUm: 17.1,
    minFoilUm: 15.4,
    internalReductionUm: 4,
    externalReductionUm: 2,
    recalled: false,
  },
  {
    weightOzPerFt2: 1,
    nominalFoilUm: 34.3,
    minFoilUm: 30.9,
    internalReductionUm: 6,
    externalReductionUm: 3,
    recalled: false,
  },
  {
    weightOzPerFt2: 2,
    nominalFoilUm: 68.6,
    minFoilUm: 61.7,
    internalReductionUm: 6,
    externalReductionUm: 3,
    recalled: false,
  },
  {
    weightOzPerFt2: 3,
    nominalFoilUm: 102.9,
    minFoilUm: 92.6,
    internalReductionUm: 6,
    externalReductionUm: 4,
    recalled: true,
  },
  {
    weightOzPerFt2: 4,
    nominalFoilUm: 137.2,
    minFoilUm: 123.5,
    internalReductionUm: 6,
    externalReductionUm: 4,
    recalled: true,
  },
]

/** Minimum plating of through-hole plated layers and of the walls of their holes, um. */
export const MIN_PLATING_UM: Record<ProductClass, number> = { 1: 20, 2: 20, 3: 25 }

/** Standard foils with their nominal thickness, lightest first. */
export const STANDARD_FOILS: readonly { weightOzPerFt2: number; nominalFoilUm: number }[] = FOIL_ROWS.map(
  ({ weightOzPerFt2, nominalFoilUm }) => ({ weightOzPerFt2, nominalFoilUm }),
)

/**
 * How far a foil as written may be from the nominal of its weight: shop figures such as 18 and 9 um are 5 to 6 % above it. Rows lie 33 % apart
 * at least. Our choice.
 */
const SAME_FOIL_FRACTION = 0.08

/** Weight of the row that a foil as bought belongs to; null where no row is near. */
export function findStandardFoilWeight(foilUm: number): number | null {
  const row = FOIL_ROWS.find(
    ({ nominalFoilUm }) => Math.abs(foilUm - nominalFoilUm) <= SAME_FOIL_FRACTION * nominalFoilUm,
  )
  return row?.weightOzPerFt2 ?? null
}

export interface MinimumFinishedCopper {
  nominalFoilUm: number
  minFoilUm: number
  minPlatingUm: number
  maxReductionUm: number
  minFinishedUm: number
  source: SourceKey
}

/**
 * Least finished copper that the performance specifications accept for a foil weight.
 *
 * Model    foil minimum + minimum plating (external only: 20 um in class 1 and 2, 25 um in class 3) - allowed reduction
 * @param weightOzPerFt2  one of the standard weights 1/8, 1/4, 3/8, 1/2, 1, 2, 3, 4
 * @returns null for a weight that has no row: the standards give none, and interpolating would invent one
 * Source   SOURCES.ipc6012 and SOURCES.ipc6013 for 1/2, 1 and 2 oz; other rows SOURCES.minimumCopperRecalled
 */
export function findMinimumFinishedCopper({
  weightOzPerFt2,
  location,
  productClass,
}: {
  weightOzPerFt2: number
  location: ConductorLocation
  productClass: ProductClass
}): MinimumFinishedCopper | null {
  const row = FOIL_ROWS.find((candidate) => candidate.weightOzPerFt2 === weightOzPerFt2)
  if (row === undefined) return null
  const external = location === 'external'
  const minPlatingUm = external ? MIN_PLATING_UM[productClass] : 0
  const maxReductionUm = external ? row.externalReductionUm : row.internalReductionUm
  return {
    nominalFoilUm: row.nominalFoilUm,
    minFoilUm: row.minFoilUm,
    minPlatingUm,
    maxReductionUm,
    minFinishedUm: row.minFoilUm + minPlatingUm - maxReductionUm,
    source: row.recalled ? 'minimumCopperRecalled' : 'ipc6012',
  }
}
