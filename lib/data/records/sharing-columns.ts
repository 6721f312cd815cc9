import 'server-only'
import {
  MATRIX_SHARINGS,
  type MatrixSharing,
  NOTHING_SHARED,
  SHEET_SHARINGS,
  type Sharing,
  type SheetSharing,
} from '@/lib/review'

export interface SharingColumns {
  readonly matrixSharing: string
  readonly shelfSharing: string
  readonly ratesSharing: string
}

/** A word that this version does not know shares nothing. */
export function readSharing(row: SharingColumns): Sharing {
  const isMatrixSharing = (word: string): word is MatrixSharing => (MATRIX_SHARINGS as readonly string[]).includes(word)
  const isSheetSharing = (word: string): word is SheetSharing => (SHEET_SHARINGS as readonly string[]).includes(word)
  return {
    matrix: isMatrixSharing(row.matrixSharing) ? row.matrixSharing : NOTHING_SHARED.matrix,
    shelf: isSheetSharing(row.shelfSharing) ? row.shelfSharing : NOTHING_SHARED.shelf,
    rates: isSheetSharing(row.ratesSharing) ? row.ratesSharing : NOTHING_SHARED.rates,
  }
}

export function toSharingColumns({ matrix, shelf, rates }: Sharing): SharingColumns {
  return { matrixSharing: matrix, shelfSharing: shelf, ratesSharing: rates }
}
