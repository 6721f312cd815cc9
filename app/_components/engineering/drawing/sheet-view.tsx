'use client'

import { useId } from 'react'
import type { DrawnSheet } from '@/lib/drawing'
import { PictureTableView, toElements } from '../pictures'

export const ZOOMS = [
  { value: 'fit', label: 'Fit to page' },
  { value: 'true', label: 'True size' },
  { value: 'double', label: 'Double size' },
] as const
export type Zoom = (typeof ZOOMS)[number]['value']

const SCALES: Readonly<Record<Exclude<Zoom, 'fit'>, number>> = { true: 1, double: 2 }

/** One sheet in a frame that scrolls, by keyboard too, and the list of what stands on it. */
export function DrawingSheetView({ sheet, zoom }: { sheet: DrawnSheet; zoom: Zoom }) {
  const id = useId()
  const { widthPx: widthMm, heightPx: heightMm } = sheet
  return (
    <figure className="drawing-sheet">
      <section
        className="drawing-sheet-frame"
        data-zoom={zoom}
        aria-label={`Sheet ${sheet.number}, scrolls`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region without focusable content needs it.
        tabIndex={0}
      >
        <svg
          role="img"
          aria-labelledby={`${id}-title ${id}-desc`}
          viewBox={`0 0 ${widthMm} ${heightMm}`}
          className="drawing-sheet-svg"
          style={{ width: zoom === 'fit' ? '100%' : `${widthMm * SCALES[zoom]}mm`, aspectRatio: widthMm / heightMm }}
        >
          <title id={`${id}-title`}>{sheet.title}</title>
          <desc id={`${id}-desc`}>{sheet.description}</desc>
          {toElements(sheet.nodes)}
        </svg>
      </section>
      <details className="small">
        <summary>Contents of this sheet</summary>
        <PictureTableView table={sheet.table} />
      </details>
    </figure>
  )
}
