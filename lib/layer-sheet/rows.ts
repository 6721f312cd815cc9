import type { Layer, Zone } from '@/lib/engine'

/** What a cell of a zone says of the row's layer; null: the layer is not in the zone. */
export type InZone = {
  readonly coverageFraction: number | null
  readonly platedCopper: Zone['presence'][number]['platedCopper']
} | null

/** A layer as its row states it. The index signature lets columns be named by zone. */
export interface LayerRow {
  readonly [column: string]: unknown
  /** Its id is that of the design's layer which the row belongs to, given when the sheet is applied. */
  readonly layer: Layer
  /** Fields that nobody stated: they hold usual values, or are written with "(assumed)". */
  readonly assumed: readonly string[]
  /** By the place of the zone's column. */
  readonly inZones: readonly InZone[]
}

/** What the lines above the layers state of a zone; a fact that is left out stays as it is in the design. */
export interface ZoneFacts {
  readonly kind?: Zone['kind']
  readonly lengthMm?: number | null
  readonly widthMm?: number | null
  readonly statedThicknessUm?: number | null
  readonly statedToleranceUm?: number | null
  readonly connectorMinUm?: number | null
  readonly connectorMaxUm?: number | null
  /** Fields of `ASSUMABLE_FIELDS.zones` that are written with "(assumed)". */
  readonly assumed: readonly string[]
}

/** A zone's column. */
export interface SheetZone {
  /** The zone of the design that the column belongs to; null is a new one. */
  readonly id: string | null
  readonly name: string
  /** Null where the sheet states nothing of the zone itself. */
  readonly facts: ZoneFacts | null
}
