import type { z } from 'zod'
import type { Issue } from '@/lib/engine'
import { processRatesContentSchema } from '../cost'
import { flexTestContentSchema } from '../flex-tests'
import { matrixContentSchema } from '../matrix/content'
import { panelFormatsContentSchema } from '../panel'
import { shelfContentSchema } from '../shelf/content'
import type { FabricationSheetKind } from './kinds'

/** What each kind of sheet holds. A kind without a schema cannot be saved yet. */
export const SHEET_CONTENT_SCHEMAS = {
  matrix: matrixContentSchema,
  shelf: shelfContentSchema,
  'panel-formats': panelFormatsContentSchema,
  'process-rates': processRatesContentSchema,
  'flex-tests': flexTestContentSchema,
} as const satisfies Partial<Record<FabricationSheetKind, z.ZodType>>

export type KeptSheetKind = keyof typeof SHEET_CONTENT_SCHEMAS
export type FabricationSheetContent<K extends KeptSheetKind> = z.infer<(typeof SHEET_CONTENT_SCHEMAS)[K]>

export function isKeptSheetKind(kind: string): kind is KeptSheetKind {
  return Object.hasOwn(SHEET_CONTENT_SCHEMAS, kind)
}

export type SheetReading<K extends KeptSheetKind> =
  | { readonly ok: true; readonly content: FabricationSheetContent<K> }
  | { readonly ok: false; readonly issues: readonly Issue[] }

/** Content of a sheet from outside: every issue with its path below `content`. */
export function readSheetContent<K extends KeptSheetKind>(kind: K, value: unknown): SheetReading<K> {
  const parsed = SHEET_CONTENT_SCHEMAS[kind].safeParse(value)
  if (parsed.success) return { ok: true, content: parsed.data as FabricationSheetContent<K> }
  return {
    ok: false,
    issues: parsed.error.issues.map((issue) => ({
      code: issue.code === 'custom' ? String(issue.params?.code ?? 'custom') : issue.code,
      path: ['content', ...issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part))],
      message: issue.message,
    })),
  }
}
