import 'server-only'
import { drawPaperModel, PRINT_PALETTE } from '@/lib/drawing'
import type { Evaluation } from '@/lib/engine'
import { listSolids, prepareFolding, shapeFold } from '@/lib/engine/folding'
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
import { writeGlb, writeStep } from '@/lib/solids'
import { type Actor, requireRevisionInView } from '../records/authorization'
import { listIssuedBefore, toRevisionEntry } from '../records/issued-before'
import { loadRevision } from '../records/loaded-revision'
import { getPersonName } from '../records/revision-record'
import { makeSnapshot } from '../records/snapshot'
import { NotFoundError } from '../store/errors'
import type { FileDownload } from '../views'
import { type ReadContext, read } from './read'
import { findPackageRow, makeFileName } from './revision-view'

interface Drawn {
  readonly source: DrawingSource
  /** What dates the PDF: release, or the calculation that it rests on. */
  readonly at: string
  /** Flat length of the arc of each bend. */
  readonly bandWidthsMm: ReadonlyMap<string, number>
  readonly results: Pick<Evaluation, 'zones' | 'bends'> | null
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
  const drawn = await read(actor, (context) => load(context, input.revisionId))
  const { source, at } = drawn
  if (input.format === 'glb' || input.format === 'step' || input.format === 'step-flat') {
    return writeFolded(drawn, input.format)
  }
  if (input.format === 'paper-a4' || input.format === 'paper-letter') return writePaperModel(drawn, input.format)
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

/** The part at its true size, to be cut from paper and folded; not found where no outline is drawn. */
async function writePaperModel(
  { source, at, bandWidthsMm }: Drawn,
  format: 'paper-a4' | 'paper-letter',
): Promise<FileDownload> {
  const { projectName, revisionLabel } = source.identity
  const pages = drawPaperModel(source.design, {
    paper: format === 'paper-a4' ? 'a4' : 'letter',
    palette: PRINT_PALETTE,
    name: `${projectName}, revision ${revisionLabel}`,
    bandWidthsMm,
  })
  if (pages.length === 0) throw new NotFoundError('paper model')
  const drawing = makeDrawingPdfIdentity(source, at)
  const identity = { ...drawing, title: `Paper model, ${drawing.subject}` }
  const bytes = await writeDrawingPdf(pages, identity, (order) => runJob('documents', order))
  return {
    fileName: makeFileName([projectName, revisionLabel], `${format}-model.pdf`),
    mediaType: 'application/pdf',
    bytes: new Uint8Array(bytes),
  }
}

/** The part folded by all its bends, or flat; not found where the stored results and the plan cannot be folded. */
async function writeFolded(
  { source, results, at }: Drawn,
  format: 'glb' | 'step' | 'step-flat',
): Promise<FileDownload> {
  const { projectName, revisionLabel } = source.identity
  const folding = results === null ? null : prepareFolding(source.design, results.zones, results.bends)
  if (folding?.kind !== 'foldable') throw new NotFoundError('folded part')
  const name = `${projectName}, revision ${revisionLabel}`
  const steps = format === 'step-flat' ? 0 : folding.value.order.length
  if (format === 'glb') {
    const bodies = shapeFold(source.design, folding.value, steps)
    return {
      fileName: makeFileName([projectName, revisionLabel], 'folded.glb'),
      mediaType: 'model/gltf-binary',
      bytes: await writeGlb(bodies, name),
    }
  }
  const { partNumber } = source.design.brief
  const solids = listSolids(source.design, folding.value, steps)
  return {
    fileName: makeFileName([projectName, revisionLabel], format === 'step' ? 'folded.step' : 'flat.step'),
    // Registered with IANA for ISO 10303 files.
    mediaType: 'model/step',
    bytes: writeStep(solids, { partNumber: partNumber === '' ? projectName : partNumber, name, revisionLabel, at }),
  }
}

async function load({ tx, rights }: ReadContext, revisionId: string): Promise<Drawn> {
  await requireRevisionInView(tx, rights, revisionId)
  const loaded = await loadRevision(tx, revisionId)
  // One drawing for everybody: from the team's snapshot, of which it shows nothing that belongs to one party alone.
  const { snapshot } = makeSnapshot(loaded, null)
  const packed = findPackageRow(loaded.record, null)
  const issuedAt = packed?.releasedAt.toISOString() ?? null
  const { release } = loaded.record
  const before = await listIssuedBefore(tx, loaded.record, release?.replacesId ?? loaded.record.basedOnId)
  return {
    source: makeDrawingSource(
      snapshot,
      loaded.workspace.name,
      issuedAt,
      loaded.record.packages[0]?.releasedById ?? null,
      packed === null || packed === undefined
        ? before
        : [
            ...before,
            toRevisionEntry(
              loaded.record.label,
              release ?? { changeNumber: '', reason: '', releasedAt: packed.releasedAt },
              getPersonName(loaded.record, packed.releasedById),
            ),
          ],
    ),
    at: issuedAt ?? snapshot.evaluation?.evaluatedAt ?? loaded.record.createdAt.toISOString(),
    bandWidthsMm: new Map(
      snapshot.evaluation?.results.bends.map(({ bendId, developedLengthMm }) => [bendId, developedLengthMm]),
    ),
    results: snapshot.evaluation?.results ?? null,
  }
}
