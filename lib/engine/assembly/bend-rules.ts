import {
  type BondedSection,
  computeHandbookRadius,
  computeRatioRadius,
  DEFAULT_RATIO_TABLE_ID,
  findRatioTable,
  HANDBOOK_DEFORMATION_PCT,
  type HandbookConstruction,
  type HandbookRadius,
  type PlacedLayer,
  type RatioTable,
  type RatioUse,
  surfaceStrainPctFromRatio,
} from '../bending'
import type { Bend } from '../design'
import type { BendResult } from '../results'
import type { BendSection, ConductorInBend } from './bend-section'

/** Where the layers of a stack lie. */
interface CopperPlaces {
  readonly totalThicknessUm: number
  readonly layers: readonly Pick<PlacedLayer, 'id' | 'innerDepthUm' | 'outerDepthUm'>[]
}

/** What the handbook's formula looks at: where the layers lie, and which of them are copper. */
export type LeafForHandbook = Omit<LeafForRules, 'section'> & { readonly section: CopperPlaces }

/** A leaf with what the rules of thumb look at. */
export interface LeafForRules {
  readonly section: Pick<BondedSection, 'neutralAxisUm'> & CopperPlaces
  /** Depth of the leaf's inside face from the inside of the bend. */
  readonly innerDepthUm: number
  readonly conductors: readonly ConductorInBend[]
}

/** Over the tolerances it comes from `bend-ranges.ts`. */
type HandbookAtNominal = Omit<BendResult['handbook'], 'minRadiusRangeMm'>
type Ratio = BendResult['ratio']

const NO_HANDBOOK: HandbookAtNominal = {
  minRadiusMm: null,
  clamped: false,
  deformationPct: null,
  formula: '',
  warning: null,
  sourceKey: 'ipc2223',
}

/**
 * The design standard's minimum radius for the bend: the largest over its leaves, each reduced by what lies inside it.
 */
export function computeHandbook(bend: Bend, leaves: readonly LeafForHandbook[]): HandbookAtNominal {
  if (bend.use === null) return NO_HANDBOOK
  let chosen: { handbook: HandbookRadius; deformationPct: number; radiusUm: number } | null = null
  for (const leaf of leaves) {
    if (leaf.conductors.length === 0) continue
    let deformationPct = 100
    for (const { foil } of leaf.conductors.flatMap((each) => (each.plating === null ? [each] : [each, each.plating]))) {
      const allowed = findDeformationPct(bend.use, foil.type)
      if (allowed === null) {
        return {
          ...NO_HANDBOOK,
          warning: `no handbook value was found for ${foil.type === 'plated' ? 'plated copper' : `${foil.type} foil`} in this use`,
        }
      }
      deformationPct = Math.min(deformationPct, allowed)
    }
    const handbook = computeHandbookRadius(describeLeaf(leaf), deformationPct)
    const radiusUm = handbook.formulaRadiusUm - leaf.innerDepthUm
    if (chosen === null || radiusUm > chosen.radiusUm) chosen = { handbook, deformationPct, radiusUm }
  }
  if (chosen === null) return NO_HANDBOOK
  const { handbook, deformationPct, radiusUm } = chosen
  return {
    minRadiusMm: Math.max(0, radiusUm) / 1000,
    clamped: handbook.clamped,
    deformationPct,
    formula: handbook.formula,
    warning: handbook.warning,
    sourceKey: handbook.source,
  }
}

/** The dynamic value is for copper of any kind; of plated copper that is folded or flexed to install the handbook says nothing. */
function findDeformationPct(use: NonNullable<Bend['use']>, type: ConductorInBend['foil']['type']): number | null {
  if (type !== 'plated') return HANDBOOK_DEFORMATION_PCT[use][type]
  return use === 'dynamic' ? HANDBOOK_DEFORMATION_PCT.dynamic.electrodeposited : null
}

/** Where the copper of each conductor layer lies in its leaf, plating included; innermost first. */
export function listCopperSpans({
  section,
  conductors,
}: LeafForHandbook): { innerDepthUm: number; outerDepthUm: number }[] {
  return conductors
    .map(({ bendLayerId, plating }) => {
      const layers = section.layers.filter(({ id }) => id === bendLayerId || id === plating?.bendLayerId)
      return {
        innerDepthUm: Math.min(...layers.map(({ innerDepthUm }) => innerDepthUm)),
        outerDepthUm: Math.max(...layers.map(({ outerDepthUm }) => outerDepthUm)),
      }
    })
    .sort((a, b) => a.innerDepthUm - b.innerDepthUm)
}

/** Puts a leaf into the formula's terms. Cover D is all that lies inside the innermost copper. */
function describeLeaf(leaf: LeafForHandbook): HandbookConstruction {
  const { section } = leaf
  const copper = listCopperSpans(leaf)
  const first = copper[0]
  const last = copper[copper.length - 1]
  if (first === undefined || last === undefined) throw new RangeError('a leaf without copper has no handbook radius')
  const coverThicknessUm = first.innerDepthUm
  if (copper.length === 1) {
    return { sides: 'single', copperThicknessUm: first.outerDepthUm - first.innerDepthUm, coverThicknessUm }
  }
  if (copper.length === 2) {
    return {
      sides: 'double',
      copperThicknessUm: Math.max(first.outerDepthUm - first.innerDepthUm, last.outerDepthUm - last.innerDepthUm),
      coverThicknessUm,
      dielectricThicknessUm: last.innerDepthUm - first.outerDepthUm,
    }
  }
  const middleUm = section.totalThicknessUm / 2
  return {
    sides: 'multilayer',
    coverThicknessUm,
    midPlaneToOuterCopperUm: Math.max(middleUm - first.innerDepthUm, last.outerDepthUm - middleUm),
  }
}

/** How the tables' columns are read; where a table has no column for some bends, a bend that is made a few times and then left is static. */
const RATIO_USES: Record<NonNullable<Bend['use']>, RatioUse> = {
  'fold-once': 'static',
  'flex-to-install': 'occasional',
  dynamic: 'dynamic',
}

/** The table that the brief names; the default one where it names none, or one that this engine does not have. */
export function chooseRatioTable(key: string | null): RatioTable {
  const table = (key === null ? null : findRatioTable(key)) ?? findRatioTable(DEFAULT_RATIO_TABLE_ID)
  if (table === null) throw new RangeError(`no ratio table "${DEFAULT_RATIO_TABLE_ID}"`)
  return table
}

export function computeRatio(
  bend: Bend,
  { thicknessUm }: Pick<BendSection, 'thicknessUm'>,
  conductorLayersPerLeaf: number,
  table: RatioTable,
): Ratio {
  const actual = (bend.insideRadiusMm * 1000) / thicknessUm
  const common = {
    actual,
    tableKey: table.id,
    tableName: table.name,
    surfaceStrainPct: surfaceStrainPctFromRatio(actual),
    sourceKey: table.source,
  }
  if (bend.use === null) return { ...common, required: null, minRadiusMm: null, advisedAgainst: false }
  const compute = (use: RatioUse) =>
    computeRatioRadius({
      table,
      use,
      conductorLayerCount: Math.max(1, conductorLayersPerLeaf),
      totalThicknessUm: thicknessUm,
    })
  const stated = compute(RATIO_USES[bend.use])
  // A table without a column for some bends reads them as static.
  const radius = stated.kind === 'not stated' && bend.use === 'flex-to-install' ? compute('static') : stated
  return radius.kind === 'stated'
    ? { ...common, required: radius.requiredRatio, minRadiusMm: radius.minInsideRadiusMm, advisedAgainst: false }
    : { ...common, required: null, minRadiusMm: null, advisedAgainst: radius.kind === 'advised against' }
}
