import 'server-only'
import type { SignInput, WithdrawSignatureInput } from '@/lib/inputs'
import { listSignedParts } from '@/lib/package'
import {
  ACT_MEANINGS,
  decideSignatureWithdrawal,
  decideSigning,
  type GrantedCapacity,
  listSigningCapacities,
  type ReviewSnapshot,
  sha256Hex,
} from '@/lib/review'
import { voidSignature } from '../../consequences/voided-signatures'
import { type Actor, type PersonRights, requireRevisionInView } from '../../records/authorization'
import { listChangesSince } from '../../records/changes-since'
import { findIssueBlockers } from '../../records/issued-revision'
import { loadRevision } from '../../records/loaded-revision'
import { writeGrant } from '../../records/signature-grant'
import { getSigningStatement } from '../../records/signing-statement'
import { makeSnapshot } from '../../records/snapshot'
import { getStandingContent } from '../../records/standing-content'
import { NotFoundError, refuseBlocked, refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'
import { writeConfirmed } from '../access/confirmed-write'
import { requireRevisionSeen, unwrap } from './stage-moves'

/**
 * Signs the present content, after asking for the person again. Refused unless version, content hash and statement are
 * the ones that the person saw: a signature never lands on content that it did not cover.
 */
export function signRevision(
  actor: Actor,
  input: SignInput,
): Promise<ActResult<{ signatureId: string; version: number }>> {
  return writeConfirmed(actor, { act: 'sign', action: 'sign-revision' }, input, async (context, confirmedBy) => {
    const { tx, rights, at, record } = context
    const { revision, fabricatorCompanyId } = await requireRevisionInView(tx, rights, input.revisionId)
    const loaded = await loadRevision(tx, revision.id)
    const { snapshot } = makeSnapshot(loaded, null)
    unwrap(decideSigning(snapshot, rights, input.capacity))
    requireRevisionSeen(loaded, input.seenVersion, fabricatorCompanyId)
    const issued = await findIssueBlockers(tx, loaded, rights)
    if (issued.length > 0) refuseBlocked(issued, 'This part number and revision was issued before.')
    const { contentJson, contentHash } = getStandingContent(loaded, snapshot)
    if (contentHash !== input.contentHash) {
      refuseStale(input.seenVersion, revision.version, listChangesSince(loaded, input.seenVersion, null), 'the content')
    }
    if (input.statement !== getSigningStatement(snapshot)) {
      refuseField('statement', 'changed', 'is not the statement of this workspace; reload the page')
    }
    const signature = await tx.signature.create({
      data: {
        revisionId: revision.id,
        signerId: rights.userId,
        signerName: rights.name,
        capacity: input.capacity,
        grantJson: writeGrant(requireGrant(snapshot, rights, input.capacity)),
        statement: input.statement,
        contentHash,
        contentJson,
        signedAt: at,
      },
    })
    await record({
      action: 'revision-signed',
      subject: { kind: 'signature', id: signature.id },
      projectId: revision.projectId,
      revisionId: revision.id,
      details: {
        capacity: input.capacity,
        statement: input.statement,
        contentHash,
        meaning: ACT_MEANINGS.sign,
        partsRoot: sha256Hex(listSignedParts(contentJson)),
        confirmedBy,
      },
    })
    return { signatureId: signature.id, version: revision.version }
  })
}

/** `decideSigning` let the capacity pass, so it is there. */
function requireGrant(snapshot: ReviewSnapshot, rights: PersonRights, capacity: string): GrantedCapacity {
  const grant = listSigningCapacities(snapshot, rights).find((own) => own.capacity === capacity)
  if (grant === undefined) throw new Error(`somebody signs as ${capacity}, which was not granted`)
  return grant
}

/** The signer withdraws their own signature, with a reason, while the revision awaits signature. It stays readable. */
export function withdrawSignature(actor: Actor, input: WithdrawSignatureInput): Promise<ActResult<null>> {
  const door = { act: 'withdraw-signature', action: 'withdraw-signature' } as const
  return writeConfirmed(actor, door, input, async (context) => {
    const { tx, rights } = context
    const row = await tx.signature.findUnique({ where: { id: input.signatureId }, select: { revisionId: true } })
    if (row === null) throw new NotFoundError('signature')
    await requireRevisionInView(tx, rights, row.revisionId, 'signature')
    const loaded = await loadRevision(tx, row.revisionId)
    const { snapshot } = makeSnapshot(loaded, null)
    const { reason } = unwrap(decideSignatureWithdrawal(snapshot, rights, input.signatureId, input.reason))
    await voidSignature(context, loaded, { signatureId: input.signatureId, reason, changes: [], by: 'signer' })
    return null
  })
}
