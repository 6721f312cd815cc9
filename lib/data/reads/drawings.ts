import 'server-only'
import { drawingFileInput } from '@/lib/inputs'
import { runJob } from '@/lib/jobs'
import {
  type DrawingSource,
  drawFileSheets,
  makeDrawingPdfIdentity,
  makeDrawingSource,
  type SheetIdentity,
  writeDrawingPdf,
  writeSheetSvg,
} from '@/lib/package'
import { type Actor, requireRevisionInView } from '../records/authorization'
import { loadRevision } from '../records/loaded-revision'
import { makeSnapshot } from '../records/snapshot'
import { NotFoundError } from '../store/errors'
import type { FileDownload } from '../views'
import { type ReadContext, read } from './read'
import { findPackageRow, makeFileName } from './revision-view'

interface Drawn {
  readonly source: DrawingSource
  /** What dates the PDF: release, or the calculation that it rests on. */
  readonly at: string
}

/** What the title block of a revision says: the same to everybody who may see the revision. */
export function getSheetIdentity(actor: Actor, revisionId: string): Promise<SheetIdentity> {
  return read(actor, async (context) => (await load(context, revisionId)).source.identity)
}

/**
 * The drawing sheets as a PDF, or one of them as SVG; in um and mm.
 * @param wanted  as the address says it; a format or sheet that does not exist is not found
 */
export async function getDrawingFile(
  actor: Actor,
  revisionId: string,
  wanted: { readonly format: string | null; readonly sheet: string | null },
): Promise<FileDownload> {
  const parsed = drawingFileInput.safeParse({ revisionId, format: wanted.format, sheet: wanted.sheet ?? 1 })
  if (!parsed.success) throw new NotFoundError('drawing sheet')
  const input = parsed.data
  const { source, at } = await read(actor, (context) => load(context, input.revisionId))
  const sheets = drawFileSheets(source)
  const name = [source.identity.projectName, source.identity.revisionLabel]
  if (input.format === 'pdf') {
    const bytes = await writeDrawingPdf(sheets, makeDrawingPdfIdentity(source, at), (order) =>
      runJob('documents', order),
    )
    return { fileName: makeFileName(name, 'drawing.pdf'), mediaType: 'application/pdf', bytes: new Uint8Array(bytes) }
  }
  const sheet = sheets[input.sheet - 1]
  if (sheet === undefined) throw new NotFoundError('drawing sheet')
  return {
    fileName: makeFileName(name, `sheet-${sheet.number}.svg`),
    mediaType: 'image/svg+xml',
    bytes: writeSheetSvg(sheet),
  }
}

async function load({ tx, rights }: ReadContext, revisionId: string): Promise<Drawn> {
  await requireRevisionInView(tx, rights, revisionId)
  const loaded = await loadRevision(tx, revisionId)
  // One drawing for everybody: from the team's snapshot, of which it shows nothing that belongs to one party alone.
  const { snapshot } = makeSnapshot(loaded, null)
  const issuedAt = findPackageRow(loaded.record, null)?.releasedAt.toISOString() ?? null
  return {
    source: makeDrawingSource(
      snapshot,
      loaded.workspace.name,
      issuedAt,
      loaded.record.packages[0]?.releasedById ?? null,
    ),
    at: issuedAt ?? snapshot.evaluation?.evaluatedAt ?? loaded.record.createdAt.toISOString(),
  }
}
