'use client'

import { useMemo } from 'react'
import { PictureView, usePlotDocument, useWidth } from '@/app/_components/engineering/pictures'
import { drawCostOverQuantity, drawCostShares, type QuantityPoint, SCREEN_PALETTE } from '@/lib/drawing'
import type { Cost } from '@/lib/fabrication'

interface CostChartsProps {
  readonly name: string
  readonly cost: Cost
  readonly overQuantity: readonly QuantityPoint[]
}

/** Where the cost comes from, and how it falls with the quantity. */
export function CostCharts({ name, cost, overQuantity }: CostChartsProps) {
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(520)
  const pictures = useMemo(() => {
    if (plotDocument === null) return []
    const frame = {
      document: plotDocument,
      palette: SCREEN_PALETTE,
      widthPx: Math.max(300, Math.min(640, widthPx)),
    }
    const { quantity, indexPerGoodPart } = cost
    const own = quantity === null ? null : { quantity, indexPerGoodPart }
    return [
      drawCostShares(cost, `Share of each step, ${name}`, frame),
      drawCostOverQuantity(overQuantity, own, `Cost over quantity, ${name}`, { ...frame, heightPx: 280 }),
    ]
  }, [plotDocument, widthPx, cost, overQuantity, name])
  return (
    <div ref={ref} className="cost-charts">
      {pictures.map((picture) => (
        <PictureView key={picture.title} picture={picture} />
      ))}
    </div>
  )
}
