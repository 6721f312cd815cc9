import 'server-only'
import { now } from '@/lib/config'
import type { Confirmation } from '@/lib/inputs'
import type { MeantAct } from '@/lib/review'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction, type WriteContext, write } from '../../consequences/write'
import { type Actor, findRevisionScope, getFabricatorCompanyId, loadRights } from '../../records/authorization'
import type { TransactionClient } from '../../store/client'
import { NotAllowedError, outcomeOf } from '../../store/errors'
import type { ActRefusal, ActResult } from '../../views'
import { type ConfirmedBy, confirmPerson, requireConfirmed } from './confirmation'

/** What a binding act is done to: enough to find the revision that it belongs to. */
interface Target {
  readonly revisionId?: string
  readonly waiverId?: string
  readonly signatureId?: string
  readonly reviewId?: string
}

type ConfirmedInput = Target & Confirmation & { readonly requestKey?: string | undefined }

/**
 * An act that binds others: asks for the person again, does it in one transaction, and writes into the revision's trail when
 * it is refused. The one door of signing, releasing, approving, declaring, reviewing and withdrawing.
 */
export function writeConfirmed<I extends ConfirmedInput, T>(
  actor: Actor,
  { act, action }: { readonly act: MeantAct; readonly action: string },
  input: I,
  work: (context: WriteContext, confirmedBy: ConfirmedBy) => Promise<T>,
): Promise<ActResult<T>> {
  return notingRefusals(actor, act, input, async () => {
    const confirmed = await outcomeOf(() => confirmPerson(actor, input))
    if (!confirmed.ok) return confirmed
    return write(actor, action, input, async (context) =>
      work(context, await requireConfirmed(context, confirmed.value)),
    )
  })
}

/** Runs a binding act, and notes in the trail that it was refused and why. What is refused leaves nothing else behind. */
export async function notingRefusals<T>(
  actor: Actor,
  act: MeantAct,
  target: Target,
  run: () => Promise<ActResult<T>>,
): Promise<ActResult<T>> {
  try {
    const result = await run()
    if (!result.ok) await noteRefusal(actor, act, target, explainRefusal(result.refusal))
    return result
  } catch (error) {
    if (error instanceof NotAllowedError) await noteRefusal(actor, act, target, 'not allowed for this person')
    throw error
  }
}

/** Without names: a refusal may be about what another fabricator did, and fabricators read the team's part of the trail. */
const REFUSAL_WORDS: Readonly<Record<ActRefusal['kind'], string>> = {
  invalid: 'an entry was not valid',
  stale: 'the content had changed meanwhile',
  blocked: 'something blocked it',
  clash: 'a rule did not allow it',
  busy: 'the server was busy',
  'too-many': 'there were too many attempts',
}

const CONFIRMATION_FIELDS: Readonly<Record<string, string>> = {
  password: 'the password was wrong',
  code: 'the second factor was wrong or missing',
  passkey: 'the passkey was wrong',
}

function explainRefusal(refusal: ActRefusal): string {
  const fields = refusal.kind === 'invalid' ? refusal.issues.map(({ path }) => String(path[0])) : []
  const failed = fields.find((field) => Object.hasOwn(CONFIRMATION_FIELDS, field))
  return (failed === undefined ? undefined : CONFIRMATION_FIELDS[failed]) ?? REFUSAL_WORDS[refusal.kind]
}

/** As many as the limit of confirmations lets fail: more would let one person fill the trail. */
const MOST = 8
const WINDOW_MS = 15 * 60_000

async function noteRefusal(actor: Actor, act: MeantAct, target: Target, reason: string): Promise<void> {
  await inWriteTransaction(async (tx) => {
    const rights = await loadRights(tx, actor.userId)
    const found = await findRevision(tx, target)
    // Of a revision that the person does not see there is nothing to say.
    if (found === null || findRevisionScope(rights, found, false) === null) return
    const at = now()
    const since = new Date(at.getTime() - WINDOW_MS).toISOString()
    const earlier = await tx.trailRecord.count({
      where: { revisionId: found.id, actorId: actor.userId, action: 'act-refused', at: { gte: since } },
    })
    if (earlier >= MOST) return
    await appendToTrail(tx, at, rights, {
      action: 'act-refused',
      subject: { kind: 'revision', id: found.id },
      projectId: found.projectId,
      revisionId: found.id,
      companyId: getFabricatorCompanyId(rights, found.projectId),
      details: { act, reason },
    })
  })
}

async function findRevision(tx: TransactionClient, { revisionId, waiverId, signatureId, reviewId }: Target) {
  const id =
    revisionId ??
    (waiverId === undefined ? undefined : (await tx.waiver.findUnique({ where: { id: waiverId } }))?.revisionId) ??
    (signatureId === undefined
      ? undefined
      : (await tx.signature.findUnique({ where: { id: signatureId } }))?.revisionId) ??
    (reviewId === undefined
      ? undefined
      : (await tx.reviewStatement.findUnique({ where: { id: reviewId } }))?.revisionId)
  return id === undefined
    ? null
    : tx.revision.findUnique({ where: { id }, include: { shares: { select: { companyId: true } } } })
}
