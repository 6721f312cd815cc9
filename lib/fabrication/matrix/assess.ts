import type { Design, Evaluation, Place } from '@/lib/engine'
import { type ConstructionFamily, countConductorLayers, findConstructionFamily } from '../construction-family'
import { findDecidingRows } from './conditions'
import { describeChange } from './describe'
import { findChoice, TRADE_PARAMETERS } from './dictionary'
import type { LocatedValue, TradeParameter } from './parameter'
import type { MatrixRow } from './row'
import { CAPABILITY_VERDICTS, type CapabilityVerdict } from './verdict'

/** A row of the matrix that decided, with its place in it. */
export interface DecidingRow extends MatrixRow {
  /** Index in the matrix. */
  readonly index: number
}

/** One value of the design against one matrix. */
export interface ValueAssessment {
  readonly value: number | string
  readonly place: Place
  readonly foilUm: number | null
  readonly verdict: CapabilityVerdict
  /** Null where the matrix says nothing. */
  readonly row: DecidingRow | null
  /** What would have to change so that it is comfortable, or at least buildable; null where nothing has to. */
  readonly change: string | null
}

export interface ParameterAssessment {
  readonly parameter: TradeParameter
  /** Worst first. Empty where the design has no such value. */
  readonly values: readonly ValueAssessment[]
  /** The design has no value: it has no such thing (`absent`), or it does not say (`unknown`). */
  readonly without: { readonly kind: 'absent' | 'unknown'; readonly reason: string } | null
}

export interface CapabilityCounts {
  readonly comfortable: number
  readonly stretch: number
  readonly outside: number
  readonly notStated: number
}

/** A design's values, found once and held against as many matrices as there are fabricators. */
export interface MeasuredDesign {
  readonly layerCount: number
  readonly family: ConstructionFamily | null
  readonly parameters: readonly {
    readonly parameter: TradeParameter
    readonly values: readonly LocatedValue[]
    readonly without: ParameterAssessment['without']
  }[]
}

export function measureDesign(design: Design, evaluation: Pick<Evaluation, 'zones'>): MeasuredDesign {
  return {
    layerCount: countConductorLayers(design),
    family: findConstructionFamily(design),
    parameters: TRADE_PARAMETERS.map((parameter) => {
      const found = parameter.measure({ design, evaluation })
      return found.kind === 'values'
        ? { parameter, values: found.values, without: null }
        : { parameter, values: [], without: found }
    }),
  }
}

/** Every value of a design against one fabricator's matrix; within a parameter the worst verdict first. */
export function assessCapability(measured: MeasuredDesign, rows: readonly MatrixRow[]): ParameterAssessment[] {
  // Stable: within a verdict the worst value stays first.
  return assessInOrder(measured, rows).map((assessment) => ({
    ...assessment,
    values: [...assessment.values].sort((a, b) => rank(a.verdict) - rank(b.verdict)),
  }))
}

/** The same in the order in which the values were measured, so that several matrices can stand side by side. */
export function assessInOrder(measured: MeasuredDesign, rows: readonly MatrixRow[]): ParameterAssessment[] {
  const byParameter = new Map<string, DecidingRow[]>()
  rows.forEach((row, index) => {
    const list = byParameter.get(row.parameter)
    if (list === undefined) byParameter.set(row.parameter, [{ ...row, index }])
    else list.push({ ...row, index })
  })
  const { layerCount, family } = measured
  return measured.parameters.map(({ parameter, values, without }) => {
    const stated = byParameter.get(parameter.key) ?? []
    const assessed = values.map((value) =>
      assessValue(parameter, value, findDecidingRows(stated, { layerCount, family, foilUm: value.foilUm })),
    )
    return { parameter, values: assessed, without }
  })
}

/** How many values fall where. What the design does not state counts nowhere. */
export function countCapability(assessments: readonly ParameterAssessment[]): CapabilityCounts {
  const count = (wanted: CapabilityVerdict) =>
    assessments.reduce((sum, { values }) => sum + values.filter(({ verdict }) => verdict === wanted).length, 0)
  return {
    comfortable: count('comfortable'),
    stretch: count('stretch'),
    outside: count('outside'),
    notStated: count('not-stated'),
  }
}

/** Names of the parameters with a value of that verdict, in the order of the dictionary. */
export function listParametersWith(
  assessments: readonly ParameterAssessment[],
  verdict: CapabilityVerdict,
): readonly string[] {
  return assessments
    .filter(({ values }) => values.some((each) => each.verdict === verdict))
    .map(({ parameter }) => parameter.name)
}

const rank = (verdict: CapabilityVerdict) => CAPABILITY_VERDICTS.indexOf(verdict)

/** Of several rows with equally many conditions the strictest verdict counts. */
function assessValue(
  parameter: TradeParameter,
  { value, place, foilUm }: LocatedValue,
  rows: readonly DecidingRow[],
): ValueAssessment {
  const none: ValueAssessment = { value, place, foilUm, verdict: 'not-stated', row: null, change: null }
  return rows
    .map((row): ValueAssessment => {
      const verdict = judge(parameter, value, row)
      return { value, place, foilUm, verdict, row, change: describeChange(parameter, value, verdict, row) }
    })
    .reduce((worst, next) => (worst.row === null || isStricter(parameter, next, worst) ? next : worst), none)
}

function isStricter(parameter: TradeParameter, a: ValueAssessment, b: ValueAssessment): boolean {
  if (a.verdict !== b.verdict) return rank(a.verdict) < rank(b.verdict)
  const limitOf = ({ row }: ValueAssessment) => row?.comfortable ?? row?.stretch
  const [own, other] = [limitOf(a), limitOf(b)]
  if (typeof own !== 'number' || typeof other !== 'number') return false
  return parameter.direction === 'smaller-is-harder' ? own > other : own < other
}

/** Where one value falls in one row; limits themselves are within. A row without a stretch limit ends at the comfortable one. */
export function judge(parameter: TradeParameter, value: number | string, row: MatrixRow): CapabilityVerdict {
  if (isWithin(parameter, value, row.comfortable)) return 'comfortable'
  return isWithin(parameter, value, row.stretch) ? 'stretch' : 'outside'
}

/** Against the last digits of sums and quotients; far below anything that a limit is stated to. */
const SLACK = 1e-9

function isWithin(parameter: TradeParameter, value: number | string, limit: MatrixRow['comfortable']): boolean {
  if (limit === null) return false
  if (typeof limit !== 'number') {
    const meant = (text: string) => findChoice(parameter, text) ?? text.trim().toLowerCase()
    return limit.some((choice) => meant(choice) === meant(String(value)))
  }
  if (typeof value !== 'number') return false
  const slack = SLACK * Math.max(1, Math.abs(limit))
  return parameter.direction === 'smaller-is-harder' ? value >= limit - slack : value <= limit + slack
}
