import { countOf } from '@/lib/engine/units'
import 'server-only'
import { type FabricationSheetContent, readSheetContent, type SheetRow, type TableSheetKind } from '@/lib/fabrication'
import type { ImportSheetFileInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import { mergeRows, readFile } from '../../reads/sheet-files'
import type { Actor } from '../../records/authorization'
import { refuseField, refuseInvalid } from '../../store/errors'
import type { ActResult } from '../../views'
import { type SavedSheet, storeSheet } from './fabrication-sheets'

/** Takes a file's rows over as a new version. The file is read again: what counts is what it holds, not what was shown. */
export function importSheetFile(actor: Actor, input: ImportSheetFileInput): Promise<ActResult<SavedSheet>> {
  return write(actor, 'import-sheet-file', input, (context) =>
    storeSheet(context, input, (before) => {
      const reading = readFile(input)
      if (reading.bad.length > 0 && !input.leaveOutBadRows) {
        refuseInvalid(
          reading.bad.map(({ line, column, reason }) => ({
            code: 'bad-cell',
            path: ['bytes', line, column],
            message: `row ${line}, ${column}: ${reason}`,
          })),
          `${reading.rowCount - reading.rows.length} of ${countOf(reading.rowCount, 'row')} cannot be imported.`,
        )
      }
      if (reading.rows.length === 0) refuseField('bytes', 'no-rows', 'holds no row that can be imported')
      const rows = mergeRows(input, (before?.rows ?? []) as readonly SheetRow[], reading)
      const made = readSheetContent(input.kind, { ...(before ?? EMPTY_CONTENT[input.kind]), rows })
      return made.ok ? made.content : refuseInvalid(made.issues)
    }),
  )
}

const EMPTY_CONTENT: { readonly [K in TableSheetKind]: FabricationSheetContent<K> } = {
  matrix: { rows: [] },
  shelf: { buildTimeDays: null, rows: [] },
  'flex-tests': { rows: [] },
}
