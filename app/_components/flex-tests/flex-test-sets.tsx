'use client'

import { type ReactNode, useMemo } from 'react'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawWeibullPlot, SCREEN_PALETTE } from '@/lib/drawing'
import type { LimitOwner } from '@/lib/engine'
import {
  type FlexTestCondition,
  type FlexTestRow,
  type FlexTestSet,
  fitFlexTestSets,
  type TestedConstant,
} from '@/lib/engine/flex-tests'
import type { BoundedEstimate } from '@/lib/engine/life'
import {
  digitsAsComputed,
  digitsOfEnteredLength,
  formatEnteredLength,
  getShownUnit,
  inSentence,
  type LengthUnit,
  withUnitInHead,
} from '@/lib/engine/units'
import { PictureView, usePlotDocument, useWidth } from '../engineering/pictures'

const PLOT_HEIGHT_PX = 340

interface FlexTestSetsProps {
  readonly rows: readonly FlexTestRow[]
  readonly owner: LimitOwner
}

/** What each set gives: slope and life with bounds, ductility, the Weibull plot, and where results may use it. */
export function FlexTestSets({ rows, owner }: FlexTestSetsProps) {
  const sets = useMemo(() => fitFlexTestSets(rows, owner), [rows, owner])
  if (sets.length === 0) return <p className="empty">No flex test yet.</p>
  return (
    <div className="stack">
      {sets.map((set) => (
        <SetView key={set.name} set={set} />
      ))}
    </div>
  )
}

const COLUMNS = {
  radius: { head: 'Inside radius', isNumeric: true, isRowHead: true },
  ratio: { head: 'R/t', isNumeric: true },
  strain: { head: 'Strain range, %', isNumeric: true },
  specimens: { head: 'Specimens', isNumeric: true },
  failed: { head: 'Failed', isNumeric: true },
  characteristic: { head: 'Characteristic life, cycles', headNote: '63.2 % failed; 90 % bounds', isNumeric: true },
  median: { head: 'Median life, cycles', headNote: '90 % bounds', isNumeric: true },
  ductility: { head: 'Fatigue ductility', headNote: '90 % bounds', isNumeric: true },
} satisfies Columns

function SetView({ set }: { readonly set: FlexTestSet }) {
  const { name, first, conditions, fit, because, noDuctilityBecause } = set
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit('mm', chosen)
  const plotDocument = usePlotDocument()
  const columns = { ...COLUMNS, radius: { ...COLUMNS.radius, head: withUnitInHead('Inside radius', unit) } }
  const { ref, widthPx } = useWidth<HTMLDivElement>(560)
  const plotWidthPx = Math.max(300, Math.min(680, widthPx))
  const picture = useMemo(
    () =>
      plotDocument === null
        ? null
        : drawWeibullPlot(set, {
            document: plotDocument,
            palette: SCREEN_PALETTE,
            widthPx: plotWidthPx,
            heightPx: PLOT_HEIGHT_PX,
            unit: chosen,
          }),
    [plotDocument, set, plotWidthPx, chosen],
  )
  return (
    <div ref={ref} className="stack">
      <h3>Set {name}</h3>
      <p className="small">
        {first.foil}, {formatEnteredLength(first.foilUm, 'um', chosen)} foil,{' '}
        {first.kind === 'circuit' ? 'circuit' : 'bare foil over mandrels'},{' '}
        {first.motion === 'one-way' ? 'one way' : 'reversed'},{' '}
        {first.temperatureDegC === null ? 'temperature not stated' : inSentence(first.temperatureDegC, 'degC')}.{' '}
        {describeUse(set)}
      </p>
      <DataTable label={`Conditions of set ${name}`} columns={columns}>
        {conditions.map((condition) => (
          <DataRow key={condition.insideRadiusMm} columns={columns} cells={makeCells(set, condition, unit)} />
        ))}
      </DataTable>
      {because === null && noDuctilityBecause !== null && <p className="small muted">{sentence(noDuctilityBecause)}</p>}
      {fit !== null && picture !== null && <PictureView picture={picture} />}
    </div>
  )
}

/** Whether results use the set, and with what slope. */
function describeUse({ fit, tested, because }: FlexTestSet): string {
  if (because !== null || tested === null || fit === null) return `Not used in results: ${because ?? 'nothing fitted'}.`
  if (tested.slope === null)
    return 'Used for ductility alone: bare foil has no etched conductors, whose scatter the slope is.'
  const { value, low, high } = tested.slope
  const bounds = `90 % bounds ${low === null ? 'open' : inSentence(low)} to ${high === null ? 'open' : inSentence(high)}`
  return low === null
    ? `Weibull slope ${inSentence(value)}, ${bounds}: without a lower bound results cannot use it.`
    : `Weibull slope ${inSentence(value)}, ${bounds}; results use the lower bound.`
}

const sentence = (text: string) => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`

function makeCells(
  { fit, first }: FlexTestSet,
  condition: FlexTestCondition,
  unit: LengthUnit,
): Record<keyof typeof COLUMNS, ReactNode> {
  const { insideRadiusMm, thicknessUm, strainRangePct, specimens, leftOut, fitted, fatigueDuctility } = condition
  const life = fitted === null ? null : (fit?.lives[fitted] ?? null)
  return {
    radius: digitsOfEnteredLength(insideRadiusMm, 'mm', unit),
    ratio: first.kind === 'circuit' ? digitsAsComputed((1000 * insideRadiusMm) / thicknessUm, 'times') : '',
    strain: strainRangePct === null ? 'not stated' : inSentence(strainRangePct),
    specimens: specimens.length,
    failed: specimens.filter(({ hasSurvived }) => !hasSurvived).length,
    characteristic: life === null ? (leftOut ?? '') : describeCycles(life.characteristicCycles),
    median: life === null ? '' : describeCycles(life.medianCycles),
    ductility: fatigueDuctility === null ? '' : describeConstant(fatigueDuctility),
  }
}

function describeCycles({ value, low, high }: BoundedEstimate): string {
  const digits = (cycles: number | null) => (cycles === null ? 'open' : digitsAsComputed(cycles, 'lifeCycles'))
  return `${digits(value)} (${digits(low)} to ${digits(high)})`
}

function describeConstant({ value, low, high }: TestedConstant): string {
  return `${inSentence(value)} (${inSentence(low)} to ${inSentence(high)})`
}
