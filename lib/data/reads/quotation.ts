import 'server-only'
import { now } from '@/lib/config'
import { drawOutline, drawPlanPicture, type Picture, PRINT_PALETTE } from '@/lib/drawing'
import type { Design } from '@/lib/engine'
import { estimate, findPricedNesting, type NestedFormat, type NestedPart } from '@/lib/fabrication'
import { quotationFileInput } from '@/lib/inputs'
import { runJob } from '@/lib/jobs'
import {
  makeQuotationRequest,
  type QuotationRequest,
  writeQuotationJson,
  writeQuotationPdf,
  writeQuotationXlsx,
} from '@/lib/package'
import { THREAD_STATES } from '@/lib/review'
import { type Actor, requireRevisionInView } from '../records/authorization'
import { toBasis } from '../records/fabrication-facts'
import { findFabricatorsInView, toFabricatorView } from '../records/fabricators-in-view'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { withNesting } from '../records/nesting'
import { type CompanySheets, pickShownSheets } from '../records/sheet-records'
import { makeSnapshot } from '../records/snapshot'
import { readWord } from '../records/stored-words'
import { computing } from '../store/computations'
import { NotFoundError } from '../store/errors'
import type { CompanyView, FileDownload } from '../views'
import { read } from './read'
import { makeFileName } from './revision-view'

/** What one fabricator is asked for a price of. */
interface QuotationView {
  readonly company: CompanyView
  readonly request: QuotationRequest
  /** The panel on which a good part costs least, to be drawn; null where there is none, or it is not shown. */
  readonly priced: { readonly part: NestedPart; readonly nested: NestedFormat } | null
}

export interface QuotationPageView {
  readonly isFabricator: boolean
  /** Fabricators that can be asked: those with whom the revision is shared; to a fabricator its own company alone. */
  readonly companies: readonly CompanyView[]
  /** Null where the revision is shared with none. */
  readonly quotation: QuotationView | null
}

/**
 * The request for quotation to one fabricator. It holds what that fabricator may read, no matter who makes it: nothing of another
 * one, no word that the team keeps to itself, and to the team only the panels that it is shown.
 *
 * @param companyId  whom it asks; null is the first by name
 */
export async function getQuotation(
  actor: Actor,
  revisionId: string,
  companyId: string | null,
): Promise<QuotationPageView> {
  const found = await load(actor, revisionId, companyId)
  const quotation = found.chosen === null ? null : await makeQuotation(found.loaded, found.chosen)
  return { isFabricator: found.isFabricator, companies: found.companies.map(toFabricatorView), quotation }
}

/** @param wanted  as the address says it; a format or fabricator that does not exist is not found */
export async function getQuotationFile(
  actor: Actor,
  revisionId: string,
  wanted: { readonly format: string | null; readonly companyId: string | null },
): Promise<FileDownload> {
  const parsed = quotationFileInput.safeParse({ revisionId, ...wanted })
  if (!parsed.success) throw new NotFoundError('file')
  const { format, companyId } = parsed.data
  const { loaded, chosen } = await load(actor, parsed.data.revisionId, companyId)
  if (chosen === null) throw new NotFoundError('request for quotation')
  const { request } = await makeQuotation(loaded, chosen)
  const name = [request.project, request.revision, chosen.companyName]
  const fileName = makeFileName(name, `request-for-quotation.${format}`)
  if (format === 'json') {
    return { fileName, mediaType: 'application/json; charset=utf-8', bytes: writeQuotationJson(request) }
  }
  if (format === 'xlsx') {
    const mediaType = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
    return { fileName, mediaType, bytes: await writeQuotationXlsx(request) }
  }
  const subject = `${request.project}, revision ${request.revision}`
  const identity = {
    title: `Request for quotation, ${subject}`,
    subject,
    author: request.from,
    at: now().toISOString(),
  }
  const bytes = await writeQuotationPdf(request, drawPart(loaded.design, request), identity, (order) =>
    runJob('documents', order),
  )
  return { fileName, mediaType: 'application/pdf', bytes: new Uint8Array(bytes) }
}

async function load(actor: Actor, revisionId: string, companyId: string | null) {
  return read(actor, async ({ tx, rights }) => {
    const { fabricatorCompanyId } = await requireRevisionInView(tx, rights, revisionId)
    const loaded = await loadRevision(tx, revisionId)
    const place = { projectId: loaded.record.projectId, fabricatorCompanyId }
    const found = await findFabricatorsInView(tx, rights, place, loaded.fabrication)
    const companies = pickShownSheets(found, fabricatorCompanyId)
    const chosen = companyId === null ? companies[0] : companies.find((company) => company.companyId === companyId)
    if (companyId !== null && chosen === undefined) throw new NotFoundError('fabricator')
    return { loaded, companies, chosen: chosen ?? null, isFabricator: fabricatorCompanyId !== null }
  })
}

/** Outside of any transaction: parts are laid on panels for it. */
function makeQuotation(loaded: LoadedRevision, chosen: CompanySheets): Promise<QuotationView> {
  const { record, design, workspace } = loaded
  return computing(() => {
    // Thicknesses alone are taken from the results, which are the same to everybody.
    const { snapshot } = makeSnapshot(loaded, null)
    const found = withNesting((nest) => estimate(design, toBasis(chosen), nest))
    const nested = findPricedNesting(found)
    return {
      company: toFabricatorView(chosen),
      request: makeQuotationRequest({
        design,
        zones: snapshot.evaluation?.results.zones ?? null,
        project: record.project.name,
        revision: record.label,
        stage: snapshot.stage,
        from: workspace.name,
        to: chosen.companyName,
        today: now().toISOString().slice(0, 10),
        estimate: found,
        isPanelShown: chosen.sharing.rates === 'shown',
        threads: record.threads
          .filter(({ audienceCompanyId }) => audienceCompanyId === chosen.companyId)
          .map(({ state, ...thread }) => ({ ...thread, state: readWord(state, THREAD_STATES, 'state of a thread') })),
      }),
      priced: found.ok && nested !== null ? { part: found.part, nested } : null,
    }
  })
}

/** Wider than it is set, so that dimensions of short lengths keep clear of each other. */
const PICTURE_WIDTH_PX = 520

function drawPart(design: Design, { outline }: QuotationRequest): Picture | null {
  const options = { palette: PRINT_PALETTE, widthPx: PICTURE_WIDTH_PX }
  if (outline === null) return null
  const { verticesMm, rollingDirection } = outline
  return drawPlanPicture(design, options) ?? drawOutline({ verticesMm, rollingDirection }, options)
}
