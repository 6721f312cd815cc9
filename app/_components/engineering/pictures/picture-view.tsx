'use client'

import { type ReactNode, useId } from 'react'
import type { Picture } from '@/lib/drawing'
import { PictureTableView } from './picture-table-view'
import { toElements } from './to-elements'

interface PictureViewProps {
  readonly picture: Picture
  /** Shown under the picture in place of its own title. */
  readonly caption?: ReactNode
}

/** A picture with its caption and the table behind it. It shrinks with the page and scrolls rather than become illegible. */
export function PictureView({ picture, caption }: PictureViewProps) {
  const id = useId()
  const { widthPx, heightPx } = picture
  return (
    <figure className="picture">
      <figcaption className="picture-caption">{caption ?? picture.title}</figcaption>
      <svg
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        width={widthPx}
        height={heightPx}
        className="picture-drawing"
      >
        <title id={`${id}-title`}>{picture.title}</title>
        <desc id={`${id}-desc`}>{picture.description}</desc>
        {toElements(picture.nodes)}
      </svg>
      <p className="small muted">{picture.description}</p>
      <details className="small">
        <summary>Numbers behind the picture</summary>
        <PictureTableView table={picture.table} />
      </details>
    </figure>
  )
}
