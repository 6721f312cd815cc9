'use client'

import { useMemo, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawTornadoPlot, SCREEN_PALETTE, type TornadoMeasure } from '@/lib/drawing'
import { type Bend, computeTornado } from '@/lib/engine'
import { useDraft } from '../draft'
import { PictureView, usePlotDocument, useWidth } from '../pictures'

const MEASURES = [
  { value: 'strain', label: 'Strain' },
  { value: 'life', label: 'Life' },
] as const

/** Each thickness, each constant and the radius alone from end to end, as bars and as the table behind them. */
export function TornadoView({ bend }: { bend: Bend }) {
  const { live, stored } = useDraft()
  const { evaluatedDesign, evaluation } = live
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(480)
  const [measure, setMeasure] = useState<TornadoMeasure>('strain')
  const governingLayerId = evaluation.bends.find(({ bendId }) => bendId === bend.id)?.governingLayerId ?? null
  const tornado = useMemo(
    () => computeTornado(evaluatedDesign, bend.id, governingLayerId, stored.testedLives),
    [evaluatedDesign, bend.id, governingLayerId, stored.testedLives],
  )
  const shownMeasure = tornado?.survivalLifeCycles == null ? 'strain' : measure
  const picture = useMemo(
    () =>
      plotDocument === null || tornado === null
        ? null
        : drawTornadoPlot(tornado, {
            document: plotDocument,
            palette: SCREEN_PALETTE,
            widthPx: Math.max(300, Math.min(760, widthPx)),
            measure: shownMeasure,
            unit,
          }),
    [plotDocument, tornado, widthPx, shownMeasure, unit],
  )
  return (
    <div ref={ref} className="stack">
      {tornado !== null && tornado.survivalLifeCycles !== null && (
        <ChoiceGroup label="Effect on" options={MEASURES} value={measure} onChange={setMeasure} />
      )}
      {tornado === null ? (
        <p className="empty">
          Nothing to vary: no copper governs this bend, an input is missing, or its states and loads are not known.
        </p>
      ) : picture === null ? (
        <p className="empty">No input of this bend has a range.</p>
      ) : (
        <PictureView picture={picture} />
      )}
    </div>
  )
}
