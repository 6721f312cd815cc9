import type { MatrixSharing, Sharing, SheetSharing } from '@/lib/review'

/** What a project's team gets of a fabricator's sheets, as it reads on screen. */
export const MATRIX_SHARING_WORDS: Record<MatrixSharing, string> = {
  'not-shared': 'not shared',
  checked: 'checked, not shown',
  shown: 'shown',
}

export const SHEET_SHARING_WORDS: Record<SheetSharing, string> = { 'not-shared': 'not shared', shown: 'shown' }

export function describeSharing({ matrix, shelf, rates }: Sharing): string {
  return `Matrix and limits ${MATRIX_SHARING_WORDS[matrix]}; shelf ${SHEET_SHARING_WORDS[shelf]}; rates and panels ${SHEET_SHARING_WORDS[rates]}`
}
