'use client'

import { useMemo } from 'react'
import { PictureView, useWidth } from '@/app/_components/engineering/pictures'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawPanel, SCREEN_PALETTE } from '@/lib/drawing'
import type { NestedFormat, NestedPart } from '@/lib/fabrication'

/** One panel with its parts, drawn to the width that the page has. */
export function PanelPicture({ part, nested }: { part: NestedPart; nested: NestedFormat }) {
  const { ref, widthPx } = useWidth<HTMLDivElement>(420)
  const { unit } = useLengthUnit()
  const picture = useMemo(
    () =>
      drawPanel(part, nested.nesting, nested.format, {
        palette: SCREEN_PALETTE,
        widthPx: Math.max(280, Math.min(460, widthPx)),
        extraMarginMm: nested.extraMarginMm,
        unit,
      }),
    [part, nested, widthPx, unit],
  )
  return (
    <div ref={ref}>
      <PictureView picture={picture} />
    </div>
  )
}
