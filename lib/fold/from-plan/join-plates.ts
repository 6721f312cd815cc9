import type { LineOrArc } from '@/lib/geometry'
import { type BandLine, sideOf } from './band-borders'
import type { CutPiece } from './cut-plan'

/** Which pieces move as one. A band that ends at no plate gets one without extent. */
export interface Plates {
  readonly plateOf: (piece: number) => string
  /** Plates before and behind the band of a piece; null where it meets another piece at its side. */
  readonly endsOf: (piece: number) => { readonly before: string; readonly behind: string } | null
}

/**
 * Pieces that lie side by side and do not bend are one plate; so are all that lie at one end of a band, which turns them together.
 *
 * @param lineOf  of a piece that bends; null for the others
 */
export function joinPlates(pieces: readonly CutPiece[], lineOf: (piece: number) => BandLine | null): Plates {
  const parents = new Map<string, string>()
  const rootOf = (id: string): string => {
    const parent = parents.get(id)
    return parent === undefined ? id : rootOf(parent)
  }
  const join = (a: string, b: string) => {
    const [first, second] = [rootOf(a), rootOf(b)]
    if (first !== second) parents.set(second, first)
  }
  const plateName = (piece: number) => `plate.${piece}`
  pieces.forEach(({ neighbours }, index) => {
    if (lineOf(index) !== null) return
    for (const { piece } of neighbours) if (lineOf(piece) === null) join(plateName(index), plateName(piece))
  })
  // Each end of each band has a name of its own, joined to whatever lies there.
  const endName = (piece: number, side: -1 | 1) => `end.${piece}.${side}`
  const touching = new Set<number>()
  pieces.forEach(({ neighbours }, index) => {
    const line = lineOf(index)
    if (line === null) return
    for (const { piece, edges } of neighbours) {
      const side = sideOf(line, edges)
      const there = lineOf(piece)
      if (side === 0) touching.add(index)
      else join(endName(index, side), there === null ? plateName(piece) : endOf(there, piece, edges, endName))
    }
  })
  return {
    plateOf: (piece) => rootOf(plateName(piece)),
    endsOf: (piece) =>
      touching.has(piece) ? null : { before: rootOf(endName(piece, -1)), behind: rootOf(endName(piece, 1)) },
  }
}

/** Two bands that follow each other at once share the plate between them, which has no extent. */
function endOf(
  line: BandLine,
  piece: number,
  edges: readonly LineOrArc[],
  endName: (piece: number, side: -1 | 1) => string,
): string {
  const side = sideOf(line, edges)
  return endName(piece, side === 0 ? 1 : side)
}
