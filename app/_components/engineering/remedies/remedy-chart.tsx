'use client'

import { useMemo, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawRemedyPlot, getEffectWord, REMEDY_EFFECTS, type RemedyEffect, SCREEN_PALETTE } from '@/lib/drawing'
import type { RemedyReport } from '@/lib/engine'
import { PictureView, usePlotDocument, useWidth } from '../pictures'

const HEIGHT_PX = 340
const EFFECT_OPTIONS = REMEDY_EFFECTS.map((effect) => ({ value: effect, label: getEffectWord(effect) }))

/** Effect against effect: what each remedy gains in strain, and what it does to thickness, radius or moment. */
export function RemedyChart({ report, chosenId }: { report: RemedyReport; chosenId: string | null }) {
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(480)
  const [effect, setEffect] = useState<RemedyEffect>('thickness')
  const chosenAt = report.remedies.findIndex((remedy) => remedy.id === chosenId)
  const picture = useMemo(
    () =>
      plotDocument === null
        ? null
        : drawRemedyPlot(report, {
            document: plotDocument,
            palette: SCREEN_PALETTE,
            widthPx: Math.max(300, Math.min(760, widthPx)),
            heightPx: HEIGHT_PX,
            unit,
            effect,
            chosen: chosenAt < 0 ? null : chosenAt + 1,
          }),
    [plotDocument, report, widthPx, unit, effect, chosenAt],
  )
  return (
    <div ref={ref}>
      <ChoiceGroup label="Strain against" options={EFFECT_OPTIONS} value={effect} onChange={setEffect} />
      {picture !== null && <PictureView picture={picture} />}
    </div>
  )
}
