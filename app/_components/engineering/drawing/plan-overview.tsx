'use client'

import { useMemo } from 'react'
import { PageSection } from '@/app/_components/ui/section'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawPlanPicture, SCREEN_PALETTE } from '@/lib/drawing'
import type { Design } from '@/lib/engine'
import { PictureView, useWidth } from '../pictures'

const PICTURE_WIDTH_PX = { least: 300, most: 980 }

/** The part in plan, as the drawing shows it; nothing where none is drawn. */
export function PlanOverview({ design }: { readonly design: Design }) {
  const { unit } = useLengthUnit()
  const { ref, widthPx } = useWidth<HTMLDivElement>(PICTURE_WIDTH_PX.most)
  const pictureWidthPx = Math.max(PICTURE_WIDTH_PX.least, Math.min(PICTURE_WIDTH_PX.most, widthPx))
  const picture = useMemo(
    () => drawPlanPicture(design, { palette: SCREEN_PALETTE, widthPx: pictureWidthPx, unit, withRoutes: true }),
    [design, pictureWidthPx, unit],
  )
  if (picture === null) return null
  return (
    <PageSection title="Part in plan">
      <div ref={ref}>
        <PictureView picture={picture} />
      </div>
    </PageSection>
  )
}
