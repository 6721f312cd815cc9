import 'server-only'
import { readStoredDesign } from '@/lib/engine'
import type { KeptSheetKind } from '@/lib/fabrication'
import { NOTHING_SHARED, OPEN_STAGES, type Sharing, type Stage } from '@/lib/review'
import { type Actor, getFabricatorCompanyId, readStage, requireCompany, requireProject } from '../records/authorization'
import { readSharing } from '../records/sharing-columns'
import { type CompanySheets, loadNewestSheets } from '../records/sheet-records'
import type { CompanyView, PersonView } from '../views'
import { isInView } from './projects'
import { read } from './read'

/** Sheets that a fabricator is asked to state first, in this order. */
const FIRST_SHEETS = ['matrix', 'shelf', 'panel-formats', 'process-rates'] as const satisfies KeptSheetKind[]
type FirstSheet = (typeof FIRST_SHEETS)[number]

/** What a fabricator who joined a project has before it. */
export interface FabricatorStartView {
  readonly company: CompanyView
  /** Null where nobody of a team asked: it came by itself. */
  readonly askedBy: PersonView | null
  readonly askedAt: string
  readonly sheets: readonly {
    readonly kind: FirstSheet
    /** A sheet that was saved without a row says nothing yet. */
    readonly state: 'stated' | 'empty' | 'not-stated'
    readonly version: number | null
    readonly issuedOn: string | null
  }[]
  /** What the project's team gets to see. */
  readonly sharing: Sharing
  /** Those of the project that it sees and that are still reviewed, newest first, with the days of their briefs. */
  readonly revisions: readonly {
    readonly id: string
    readonly label: string
    readonly stage: Stage
    readonly manufacturingReviewOn: string | null
    readonly layoutFreezeOn: string | null
    readonly neededOn: string | null
  }[]
  readonly may: { readonly editSheets: boolean; readonly share: boolean }
}

/** Who invited the person's company, what is wanted by when, and what it has stated; null to anybody who is no fabricator in the project. */
export function getFabricatorStart(actor: Actor, projectId: string): Promise<FabricatorStartView | null> {
  return read(actor, async ({ tx, rights }) => {
    const project = await requireProject(tx, rights, projectId)
    const companyId = getFabricatorCompanyId(rights, project.id)
    if (companyId === null) return null
    const { company, may } = await requireCompany(tx, rights, companyId, 'company:view')
    const part = await tx.participation.findUnique({
      where: { companyId_projectId: { companyId, projectId: project.id } },
    })
    if (part === null) return null
    const asker =
      part.askedById === null
        ? null
        : await tx.user.findUnique({ where: { id: part.askedById }, select: { id: true, name: true } })
    const sheets = (await loadNewestSheets(tx, [companyId])).get(companyId) ?? {}
    const revisions = await tx.revision.findMany({
      where: { projectId: project.id, stage: { in: [...OPEN_STAGES] } },
      select: {
        id: true,
        projectId: true,
        label: true,
        stage: true,
        designJson: true,
        shares: { select: { companyId: true } },
      },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    })
    return {
      company: { id: company.id, kind: 'fabricator', name: company.name },
      askedBy: asker,
      askedAt: part.askedAt.toISOString(),
      sheets: FIRST_SHEETS.map((kind) => describeSheet(kind, sheets)),
      sharing: part.state === 'takes-part' ? readSharing(part) : NOTHING_SHARED,
      revisions: revisions
        .filter((row) => isInView(rights, row))
        .map(({ id, label, stage, designJson }) => {
          const { manufacturingReviewDate, layoutFreezeDate, needDate } = readStoredDesign(designJson).brief
          return {
            id,
            label,
            stage: readStage(stage),
            manufacturingReviewOn: manufacturingReviewDate,
            layoutFreezeOn: layoutFreezeDate,
            neededOn: needDate,
          }
        }),
      may: { editSheets: may('sheet:edit'), share: may('company:share') },
    }
  })
}

function describeSheet(kind: FirstSheet, sheets: CompanySheets['sheets']): FabricatorStartView['sheets'][number] {
  const sheet = sheets[kind]
  if (sheet === undefined) return { kind, state: 'not-stated', version: null, issuedOn: null }
  const { version, issuedOn } = sheet
  return { kind, state: countEntries(kind, sheets) === 0 ? 'empty' : 'stated', version, issuedOn }
}

function countEntries(kind: FirstSheet, sheets: CompanySheets['sheets']): number {
  switch (kind) {
    case 'matrix':
      return sheets.matrix?.content.rows.length ?? 0
    case 'shelf':
      return sheets.shelf?.content.rows.length ?? 0
    case 'panel-formats':
      return sheets['panel-formats']?.content.formats.length ?? 0
    case 'process-rates': {
      const rates = sheets['process-rates']?.content
      return (rates?.steps.length ?? 0) + (rates?.registration.length ?? 0)
    }
  }
}
