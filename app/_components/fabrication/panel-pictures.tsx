'use client'

import { useMemo } from 'react'
import { PictureView, useWidth } from '@/app/_components/engineering/pictures'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawPanel, SCREEN_PALETTE } from '@/lib/drawing'
import type { NestedFormat } from '@/lib/fabrication'
import type { Polygon } from '@/lib/geometry'

/** One panel with its parts, drawn to the width that the page has. */
export function PanelPicture({ outline, nested }: { outline: Polygon; nested: NestedFormat }) {
  const { ref, widthPx } = useWidth<HTMLDivElement>(420)
  const { unit } = useLengthUnit()
  const picture = useMemo(
    () =>
      drawPanel(outline, nested.nesting, nested.format, {
        palette: SCREEN_PALETTE,
        widthPx: Math.max(280, Math.min(460, widthPx)),
        extraMarginMm: nested.extraMarginMm,
        unit,
      }),
    [outline, nested, widthPx, unit],
  )
  return (
    <div ref={ref}>
      <PictureView picture={picture} />
    </div>
  )
}
