import 'server-only'
import type { Design } from '@/lib/engine'
import {
  describeCondition,
  describeDecision,
  hashDeclaredContent,
  listStandings,
  type ReviewSnapshot,
} from '@/lib/review'
import { listDoneOptions } from '../records/done-since'
import type { LoadedRevision } from '../records/loaded-revision'
import { toPersonView } from '../records/part-views'
import type { DeclarationView, RevisionRights, RevisionView, StandingView } from '../views'

interface DeclaredRequest {
  readonly loaded: LoadedRevision
  /** Of the person asking: it holds nothing of another fabricator. */
  readonly snapshot: ReviewSnapshot
  readonly bases: ReadonlyMap<string, Design>
  readonly may: RevisionRights
  readonly fabricatorCompanyId: string | null
}

/** What fabricators declared, how each stands to the present content, and what is to be done. */
export function toDeclaredViews(request: DeclaredRequest): Pick<RevisionView, 'declarations' | 'standings' | 'team'> {
  const { loaded, snapshot, may } = request
  const contentHash = hashDeclaredContent(snapshot)
  return {
    declarations: listDeclarations(request, contentHash),
    standings: listStandings(snapshot, contentHash).map(
      ({ companyId, companyName, kind, takenOff }): StandingView => ({
        company: { id: companyId, kind: 'fabricator', name: companyName },
        kind,
        takenOffBecause: takenOff?.reason ?? '',
        takenOffBy: takenOff?.byName ?? '',
      }),
    ),
    team: may.decideConditions
      ? loaded.record.project.memberships
          .filter(({ role }) => role === 'lead' || role === 'member')
          .map(({ userId }) => toPersonView(loaded.record, userId))
      : [],
  }
}

function listDeclarations(
  { loaded, snapshot, bases, may, fabricatorCompanyId }: DeclaredRequest,
  contentHash: string,
): DeclarationView[] {
  const rows = new Map(loaded.record.declarations.map((row) => [row.id, row]))
  const last = new Map(snapshot.declarations.map(({ companyId, id }) => [companyId, id]))
  return snapshot.declarations.map((declaration) => {
    const row = rows.get(declaration.id)
    const isLast = last.get(declaration.companyId) === declaration.id
    const mayDecide = isLast && may.decideConditions && row !== undefined
    return {
      id: declaration.id,
      company: { id: declaration.companyId, kind: 'fabricator', name: declaration.companyName },
      verdict: declaration.verdict,
      isFromBefore: declaration.isFromBefore === true,
      note: declaration.note,
      conditions: declaration.conditions.map((condition) => ({
        id: condition.id,
        version: row?.conditions.find(({ id }) => id === condition.id)?.version ?? 0,
        text: describeCondition(condition),
        state: condition.state,
        decision: describeDecision(condition),
        decidedBy: condition.decidedByName,
        decidedAt: condition.decidedAt,
        options:
          mayDecide && condition.state === 'open'
            ? listDoneOptions(loaded, bases, { at: row.madeAt, designHash: row.designHash }, fabricatorCompanyId)
            : null,
      })),
      madeBy: { id: declaration.madeBy, name: declaration.madeByName },
      madeAt: declaration.madeAt,
      stands: declaration.contentHash === contentHash,
    }
  })
}
