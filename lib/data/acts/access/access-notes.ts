import 'server-only'
import { getSettings, log, now } from '@/lib/config'
import type { Actor } from '../../records/authorization'
import type { Visit } from '../../records/visit'
import { db, inTransaction, type TransactionClient } from '../../store/client'
import type { AccessKind } from '../../views'

/** What was asked for, by the ids in its address: claims, which are looked up. */
export interface AccessPlace {
  readonly projectId?: string | undefined
  readonly revisionId?: string | undefined
  readonly artworkId?: string | undefined
  readonly attachmentId?: string | undefined
  readonly companyId?: string | undefined
}

export interface AccessNote {
  readonly kind: Exclude<AccessKind, 'signed-in' | 'sign-in-refused'>
  readonly place: AccessPlace
  /** A file's name, or the address that was refused. */
  readonly what: string
}

const HOUR_MS = 3_600_000
const DAY_MS = 86_400_000
/** Whoever tries ids at random must not fill the disk: of more in an hour the log of the server tells. Our choice. */
const MOST_REFUSALS_IN_AN_HOUR = 200

/**
 * Notes who opened, fetched or was refused what. What was opened again from the same place within the hour is the same opening; files are noted
 * each time. Where it cannot be noted the reader gets what they asked for all the same, and the log says so.
 */
export async function noteAccess(actor: Actor, visit: Visit, note: AccessNote): Promise<void> {
  try {
    await inTransaction(async (tx) => {
      const at = now()
      const place = await findPlace(tx, note.place)
      const what =
        place.label === '' || note.kind === 'refused' ? note.what : [place.label, note.what].filter(Boolean).join(': ')
      const same = {
        userId: actor.userId,
        kind: note.kind,
        sourceKey: visit.sourceKey,
        at: { gt: new Date(at.getTime() - HOUR_MS) },
      }
      if (note.kind !== 'file-fetched' && (await tx.accessEvent.count({ where: { ...same, what } })) > 0) return
      if (note.kind === 'refused' && (await tx.accessEvent.count({ where: same })) >= MOST_REFUSALS_IN_AN_HOUR) return
      await tx.accessEvent.create({
        data: {
          at,
          kind: note.kind,
          userId: actor.userId,
          userName: actor.name,
          ...(await findCompany(tx, actor, place.projectId)),
          projectId: place.projectId,
          revisionId: place.revisionId,
          ownerCompanyId: place.ownerCompanyId,
          what: what.slice(0, 500),
          sourceKey: visit.sourceKey,
          device: visit.device,
        },
      })
    })
  } catch (error) {
    log.error('unexpected error', { doing: 'noting who opened what', kind: note.kind, error })
  }
}

interface Place {
  readonly projectId: string | null
  readonly revisionId: string | null
  readonly ownerCompanyId: string | null
  readonly label: string
}

async function findPlace(tx: TransactionClient, claimed: AccessPlace): Promise<Place> {
  const revisionId = claimed.revisionId ?? (await findRevisionOfFile(tx, claimed))
  if (revisionId !== undefined) {
    const select = { id: true, label: true, projectId: true, project: { select: { name: true } } } as const
    const found = await tx.revision.findUnique({ where: { id: revisionId }, select })
    if (found !== null) {
      const { id, projectId, project, label } = found
      return { projectId, revisionId: id, ownerCompanyId: null, label: `${project.name} ${label}` }
    }
  }
  const project =
    claimed.projectId === undefined ? null : await tx.project.findUnique({ where: { id: claimed.projectId } })
  const company =
    claimed.companyId === undefined ? null : await tx.company.findUnique({ where: { id: claimed.companyId } })
  return {
    projectId: project?.id ?? null,
    revisionId: null,
    ownerCompanyId: company?.id ?? null,
    label: company?.name ?? project?.name ?? '',
  }
}

async function findRevisionOfFile(
  tx: TransactionClient,
  { artworkId, attachmentId }: AccessPlace,
): Promise<string | undefined> {
  const select = { revisionId: true } as const
  if (artworkId !== undefined) return (await tx.artwork.findUnique({ where: { id: artworkId }, select }))?.revisionId
  if (attachmentId === undefined) return undefined
  return (await tx.attachment.findUnique({ where: { id: attachmentId }, select }))?.revisionId
}

/** For whom the person is in the project; elsewhere whose own person they are. */
async function findCompany(tx: TransactionClient, actor: Actor, projectId: string | null) {
  const companyId =
    actor.memberships.find((own) => own.projectId === projectId)?.companyId ??
    actor.companies[0]?.companyId ??
    actor.memberships[0]?.companyId
  const company = companyId === undefined ? null : await tx.company.findUnique({ where: { id: companyId } })
  return company === null ? {} : { companyId: company.id, companyName: company.name }
}

/** @returns how many were deleted: what is older than the settings say is kept */
export async function forgetOldAccess(): Promise<number> {
  const before = new Date(now().getTime() - getSettings().accessLogDays * DAY_MS)
  return (await db().accessEvent.deleteMany({ where: { at: { lt: before } } })).count
}

/** A sign-in, or one that was refused to somebody whose account was meant; in the transaction that carries it out. */
export async function noteSignIn(
  tx: TransactionClient,
  user: { readonly id: string; readonly name: string },
  {
    kind,
    what,
    visit,
    at,
  }: { kind: 'signed-in' | 'sign-in-refused'; what: string; visit: Pick<Visit, 'sourceKey' | 'device'>; at: Date },
): Promise<void> {
  const { sourceKey, device } = visit
  await tx.accessEvent.create({ data: { at, kind, userId: user.id, userName: user.name, what, sourceKey, device } })
}
