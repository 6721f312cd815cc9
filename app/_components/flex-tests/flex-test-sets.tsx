'use client'

import { useMemo } from 'react'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import {
  cautionOfFlexTestSet,
  describeFlexTestSet,
  drawWeibullPlot,
  listFlexTestConditions,
  SCREEN_PALETTE,
} from '@/lib/drawing'
import type { LimitOwner } from '@/lib/engine'
import { type FlexTestRow, type FlexTestSet, fitFlexTestSets } from '@/lib/engine/flex-tests'
import { PictureTableView, PictureView, usePlotDocument, useWidth } from '../engineering/pictures'

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

function SetView({ set }: { readonly set: FlexTestSet }) {
  const { name, fit } = set
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
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
            unit,
          }),
    [plotDocument, set, plotWidthPx, unit],
  )
  return (
    <div ref={ref} className="stack">
      <h3>Set {name}</h3>
      <p className="small">{describeFlexTestSet(set, unit)}</p>
      <PictureTableView table={listFlexTestConditions(set, unit)} />
      {fit !== null && <p className="small muted">{cautionOfFlexTestSet(set)}</p>}
      {fit !== null && picture !== null && <PictureView picture={picture} />}
    </div>
  )
}
