import type { FoilType, Material, SourcedNumber } from '../design/material'

/**
 * Compact form in which the library is written: a number and the key of its source, then lowest and highest value and the key of theirs.
 */
type Sourced =
  | readonly [value: number, sourceKey: string]
  | readonly [value: number, sourceKey: string, low: number, high: number, spreadSourceKey: string]

interface MaterialRecord {
  readonly id: string
  readonly name: string
  readonly kind: Material['kind']
  readonly specification: string
  readonly modulusGpa: Sourced
  readonly poisson: Sourced
  readonly densityGPerCm3?: Sourced
  readonly maxServiceDegC?: Sourced
  readonly maxSolderDegC?: Sourced
  readonly relativePermittivity?: Sourced
  readonly expansionPpmPerC?: Sourced
  readonly yieldStrainPct?: Sourced
  readonly flowFraction?: Sourced
  readonly foil?: {
    readonly type: FoilType
    readonly yieldStrengthMpa: Sourced
    readonly tensileStrengthMpa: Sourced
    readonly fatigueDuctility: Sourced
    readonly allowableFoldOncePct: Sourced | null
    readonly allowableInstallPct: Sourced | null
    readonly resistivityOhmMm2PerM: Sourced
  }
  readonly note: string
}

const sourced = ([value, sourceKey, low, high, spreadSourceKey]: Sourced): SourcedNumber => ({
  value,
  sourceKey,
  spread:
    low === undefined || high === undefined || spreadSourceKey === undefined
      ? null
      : { low, high, sourceKey: spreadSourceKey },
})
const sourcedOrNull = (pair: Sourced | null | undefined) => (pair == null ? null : sourced(pair))

/** The design document's form of a library record. */
export function makeMaterial(record: MaterialRecord): Material {
  const { foil } = record
  return {
    id: record.id,
    name: record.name,
    kind: record.kind,
    specification: record.specification,
    modulusGpa: sourced(record.modulusGpa),
    poisson: sourced(record.poisson),
    densityGPerCm3: sourcedOrNull(record.densityGPerCm3),
    maxServiceDegC: sourcedOrNull(record.maxServiceDegC),
    maxSolderDegC: sourcedOrNull(record.maxSolderDegC),
    relativePermittivity: sourcedOrNull(record.relativePermittivity),
    expansionPpmPerC: sourcedOrNull(record.expansionPpmPerC),
    yieldStrainPct: sourcedOrNull(record.yieldStrainPct),
    flowFraction: sourcedOrNull(record.flowFraction),
    foil:
      foil === undefined
        ? null
        : {
            type: foil.type,
            yieldStrengthMpa: sourced(foil.yieldStrengthMpa),
            tensileStrengthMpa: sourced(foil.tensileStrengthMpa),
            fatigueDuctility: sourced(foil.fatigueDuctility),
            allowableFoldOncePct: sourcedOrNull(foil.allowableFoldOncePct),
            allowableInstallPct: sourcedOrNull(foil.allowableInstallPct),
            resistivityOhmMm2PerM: sourced(foil.resistivityOhmMm2PerM),
          },
    note: record.note,
  }
}
