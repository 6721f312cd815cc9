import { type Design, type DraftEvaluation, findMaterial, type Layer, type Material, parseDesign } from '@/lib/engine'
import { assessCapability, measureDesign } from '../matrix/assess'
import type { MatrixRow } from '../matrix/row'
import type { HeldRow, PurchaseAssessment } from './assess'
import type { ShelfContent } from './content'
import { findCalledMaterials, hasRightShape, isSameThickness, matchesPurchase } from './matching'
import type { Purchase } from './purchases'
import { describeMoves, findWorseCapability, findWorseVerdicts } from './verdict-moves'

/** Something on the shelf that could take a material's place. */
export interface Substitute {
  readonly row: HeldRow
  readonly design: Design
  /** What moved, in words: thicknesses, strains, lives, verdicts that got better. */
  readonly moves: readonly string[]
}

export interface SubstituteSearch {
  readonly kept: readonly Substitute[]
  /** How many were tried and left out since a verdict got worse, with the first such verdict of each. */
  readonly leftOut: readonly { readonly row: HeldRow; readonly because: string }[]
}

export interface SubstituteOptions {
  /** The evaluation that verdicts are held against, made by `evaluateDesign`. */
  readonly evaluation: DraftEvaluation
  /** Evaluates a trial in full, with the limits and facts of the review. */
  readonly evaluateDesign: (design: Design) => DraftEvaluation
  /** The fabricator's matrix, so that a substitute does not leave it. */
  readonly matrix?: readonly MatrixRow[]
}

/** A neighbouring thickness is worth a trial between half and double; beyond, it is another construction. */
const NEAR_FACTOR = 2
/** Each trial is a full evaluation: the nearest are tried, and the best few shown. */
const MAX_TRIALS = 12
const MAX_KEPT = 4

/** Materials on the shelf of the same kind and a thickness nearby, each tried in the design, that keep every verdict. */
export function findSubstitutes(
  design: Design,
  { purchase }: PurchaseAssessment,
  shelf: ShelfContent,
  options: SubstituteOptions,
): SubstituteSearch {
  const candidates = shelf.rows
    .map((row, index): HeldRow => ({ ...row, index }))
    .filter((row) => row.onShelf && !matchesPurchase(design, purchase, row) && hasRightShape(purchase, row))
    .flatMap((row) => {
      const trial = substitute(design, purchase, row)
      return trial === null ? [] : [{ row, trial, distance: measureDistance(purchase, row) }]
    })
    .sort((a, b) => a.distance - b.distance)
    .slice(0, MAX_TRIALS)
  const before =
    options.matrix === undefined ? null : assessCapability(measureDesign(design, options.evaluation), options.matrix)
  const kept: Substitute[] = []
  const leftOut: { row: HeldRow; because: string }[] = []
  for (const { row, trial } of candidates) {
    const evaluation = options.evaluateDesign(trial)
    const worse =
      findWorseVerdicts(options.evaluation, evaluation)[0] ??
      (before === null
        ? undefined
        : findWorseCapability(before, assessCapability(measureDesign(trial, evaluation), options.matrix ?? []))[0])
    if (worse !== undefined) leftOut.push({ row, because: worse })
    else if (kept.length < MAX_KEPT) {
      kept.push({ row, design: trial, moves: describeMoves(options.evaluation, evaluation) })
    }
  }
  return { kept, leftOut }
}

/** How far the thicknesses are apart, as the sum of their ratios' logarithms; another material counts as one step. */
function measureDistance({ layer, foilLayers, adhesiveLayers }: Purchase, row: HeldRow): number {
  const apart = (a: number, b: number | null) => (b === null ? 0 : Math.abs(Math.log(a / b)))
  const foil = foilLayers[0] === undefined ? 0 : apart(foilLayers[0].thicknessUm, row.foilUm)
  const adhesive = adhesiveLayers[0] === undefined ? 0 : apart(adhesiveLayers[0].thicknessUm, row.adhesiveUm)
  return apart(layer.thicknessUm, row.thicknessUm) + foil + adhesive
}

/** The design with the row's material in the purchase's place; null where that makes no valid or no nearby design. */
function substitute(design: Design, { layer, foilLayers, adhesiveLayers }: Purchase, row: HeldRow): Design | null {
  const changes = new Map<string, { materialId: string; thicknessUm: number }>()
  const plan = (target: Layer & { materialId: string }, called: string | null, thicknessUm: number | null): boolean => {
    if (called === null || thicknessUm === null) return false
    const ratio = thicknessUm / target.thicknessUm
    if (ratio > NEAR_FACTOR || ratio < 1 / NEAR_FACTOR) return false
    const material = pickMaterial(design, target.materialId, called)
    if (material === null) return false
    // What has the same thickness under another name keeps the name that the design gives it.
    const isSame = isSameThickness(target.thicknessUm, thicknessUm, target.kind === 'conductor' ? 'foil' : 'sheet')
    changes.set(target.id, { materialId: material.id, thicknessUm: isSame ? target.thicknessUm : thicknessUm })
    return true
  }
  const isPlanned =
    plan(layer, row.material, row.thicknessUm) &&
    foilLayers.every((foil) => plan(foil, row.foil, row.foilUm)) &&
    adhesiveLayers.every((adhesive) => plan(adhesive, row.adhesive, row.adhesiveUm))
  if (!isPlanned) return null
  const layers = design.construction.layers.map((old): Layer => {
    const change = changes.get(old.id)
    if (change === undefined || old.kind === 'unbonded-gap') return old
    // Makers state tolerances as a share of the thickness.
    const scale = change.thicknessUm / old.thicknessUm
    const tolerancePlusUm = old.tolerancePlusUm * scale
    return { ...old, ...change, tolerancePlusUm, toleranceMinusUm: old.toleranceMinusUm * scale }
  })
  const parsed = parseDesign({ ...design, construction: { ...design.construction, layers } })
  return parsed.ok ? parsed.value : null
}

/** The material that a row calls out, of the same kind as the one in the design; the design's own where that is meant. */
function pickMaterial(design: Design, materialId: string, called: string): Material | null {
  const present = findMaterial(design, materialId)
  if (present === null) return null
  const meant = findCalledMaterials(design, called).filter(({ kind }) => kind === present.kind)
  return meant.find(({ id }) => id === materialId) ?? meant[0] ?? null
}
