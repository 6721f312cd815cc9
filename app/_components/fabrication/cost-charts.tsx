'use client'

import { useMemo } from 'react'
import { PictureView, usePlotDocument, useWidth } from '@/app/_components/engineering/pictures'
import { drawCostOverQuantity, drawCostShares, type Picture, type QuantityPoint, SCREEN_PALETTE } from '@/lib/drawing'
import type { Cost } from '@/lib/fabrication'

const OVER_QUANTITY_HEIGHT_PX = 280

interface CostChartsProps {
  readonly name: string
  readonly cost: Cost
  readonly overQuantity: readonly QuantityPoint[]
}

/** Cost by step, and how it falls with the quantity. */
export function CostCharts({ name, cost, overQuantity }: CostChartsProps) {
  return (
    <div className="cost-charts">
      <Chart draw={(frame) => drawCostShares(cost, `Share of each step, ${name}`, frame)} basis={cost} />
      <Chart
        draw={(frame) => {
          const { quantity, indexPerGoodPart } = cost
          const own = quantity === null ? null : { quantity, indexPerGoodPart }
          const sized = { ...frame, heightPx: OVER_QUANTITY_HEIGHT_PX }
          return drawCostOverQuantity(overQuantity, own, `Cost over quantity, ${name}`, sized)
        }}
        basis={cost}
      />
    </div>
  )
}

interface ChartProps {
  readonly draw: (frame: { document: Document; palette: typeof SCREEN_PALETTE; widthPx: number }) => Picture
  /** What the picture shows: it is drawn again when this is another. */
  readonly basis: Cost
}

/** Drawn to the width of its own column. */
function Chart({ draw, basis }: ChartProps) {
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(480)
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is drawn follows from the basis.
  const picture = useMemo(() => {
    if (plotDocument === null) return null
    return draw({ document: plotDocument, palette: SCREEN_PALETTE, widthPx: Math.max(300, Math.min(640, widthPx)) })
  }, [plotDocument, widthPx, basis])
  return <div ref={ref}>{picture !== null && <PictureView picture={picture} />}</div>
}
