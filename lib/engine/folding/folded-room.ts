import type { Design } from '../design'
import type { FoldableDesign } from './fold-design'
import { measureFoldedBox } from './fold-fit'

/** The sides of the room of a folded part, along the axes of the area that stays, as people name them. */
export const ROOM_SIDES = [
  { field: 'alongXMm', words: 'along x' },
  { field: 'alongYMm', words: 'along y' },
  { field: 'heightMm', words: 'in height' },
] as const

/** What the folded part takes along one side, and what it has. */
export interface RoomSide {
  readonly field: (typeof ROOM_SIDES)[number]['field']
  readonly words: string
  readonly takenMm: number
  /** Bounds of what it takes: arcs are bracketed. */
  readonly takenRangeMm: { readonly low: number; readonly high: number }
  /** Null where nobody has stated it. */
  readonly roomMm: number | null
}

/** The box of the part folded by all its bends at nominal radii, components included, beside its room. */
export function measureRoom({ plan }: Design, folding: FoldableDesign): readonly RoomSide[] {
  const box = measureFoldedBox(folding)
  return ROOM_SIDES.map(({ field, words }, axis) => {
    const { lowerMm, upperMm } = box[axis as 0 | 1 | 2]
    return {
      field,
      words,
      takenMm: (lowerMm + upperMm) / 2,
      takenRangeMm: { low: lowerMm, high: upperMm },
      roomMm: plan?.housing?.[field] ?? null,
    }
  })
}
