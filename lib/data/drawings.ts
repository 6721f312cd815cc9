import 'server-only'
import { drawingFileInput } from '@/lib/inputs'
import { drawFileSheets, makeSheetIdentity, type SheetIdentity, writeDrawingPdf, writeSheetSvg } from '@/lib/package'
import type { ReviewSnapshot } from '@/lib/review'
import { type Actor, requireRevisionInView } from './authorization'
import { NotFoundError } from './errors'
import { type ReadContext, read } from './read'
import { findPackageRow, makeFileName } from './revision-view'
import { loadRevision, makeSnapshot } from './snapshot'
import type { FileDownload } from './views'

interface Drawn {
  readonly snapshot: ReviewSnapshot
  readonly identity: SheetIdentity
  /** What dates the PDF: release, or the calculation that it rests on. */
  readonly at: string
}

/** What the title block of a revision says, as the person may see it. */
export function getSheetIdentity(actor: Actor, revisionId: string): Promise<SheetIdentity> {
  return read(actor, async (context) => (await load(context, revisionId)).identity)
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
  const { snapshot, identity, at } = await read(actor, (context) => load(context, input.revisionId))
  const sheets = drawFileSheets(snapshot, identity)
  const name = [snapshot.projectName, snapshot.label]
  if (input.format === 'pdf') {
    const bytes = await writeDrawingPdf(sheets, {
      title: `Drawing, ${snapshot.projectName}, revision ${snapshot.label}`,
      subject: `${snapshot.projectName}, revision ${snapshot.label}`,
      author: identity.ownerName,
      at,
    })
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

async function load({ tx, standing }: ReadContext, revisionId: string): Promise<Drawn> {
  const { fabricatorCompanyId } = await requireRevisionInView(tx, standing, revisionId)
  const loaded = await loadRevision(tx, revisionId)
  const { snapshot } = makeSnapshot(loaded, fabricatorCompanyId)
  const issuedAt = findPackageRow(loaded.record, fabricatorCompanyId)?.releasedAt.toISOString() ?? null
  return {
    snapshot,
    identity: makeSheetIdentity(snapshot, loaded.workspace.name, issuedAt),
    at: issuedAt ?? snapshot.evaluation?.evaluatedAt ?? loaded.record.createdAt.toISOString(),
  }
}
