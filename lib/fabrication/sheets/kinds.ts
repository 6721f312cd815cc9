import { z } from 'zod'

/**
 * What a fabricator keeps of their own work, each as a sheet that is saved in versions: the capability matrix, the shelf,
 * the panel formats, the rates of their process steps, and their flex tests.
 */
export const SHEET_KINDS = ['matrix', 'shelf', 'panel-formats', 'process-rates', 'flex-tests'] as const
export type FabricationSheetKind = (typeof SHEET_KINDS)[number]

export const sheetKindSchema = z.enum(SHEET_KINDS)

export const SHEET_NAMES: Readonly<Record<FabricationSheetKind, string>> = {
  matrix: 'capability matrix',
  shelf: 'shelf',
  'panel-formats': 'panel formats',
  'process-rates': 'process rates',
  'flex-tests': 'flex tests',
}
