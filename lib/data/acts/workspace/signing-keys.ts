import 'server-only'
import { generateKeyPairSync } from 'node:crypto'
import { keepSigningKeyFile } from '@/lib/config'
import type { ReportKeyCompromisedInput, RotateSigningKeyInput } from '@/lib/inputs'
import { endorseKey } from '@/lib/package'
import { write } from '../../consequences/write'
import { read } from '../../reads/read'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { WORKSPACE_ID } from '../../records/settings-record'
import { findRetirement, loadKeys, loadSigningKeys, nameKey } from '../../records/signing-keys'
import { outcomeOf, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'
import { confirmPerson, requireConfirmed } from '../access/confirmation'

const SUBJECT = { kind: 'workspace', id: WORKSPACE_ID } as const
const toMoment = (day: string) => `${day}T00:00:00.000Z`

/**
 * Another signing key takes the place of the one in use, which stays in the register: what it signed until now is verified by it. A key that
 * somebody else may have had endorses no other.
 */
export async function rotateSigningKey(
  actor: Actor,
  input: RotateSigningKeyInput,
): Promise<ActResult<{ fingerprint: string }>> {
  await read(actor, async ({ rights }) => requireInWorkspace(rights, 'signing-key:rotate'))
  const confirmed = await outcomeOf(() => confirmPerson(actor, input))
  if (!confirmed.ok) return confirmed
  return write(actor, 'rotate-signing-key', input, async (context) => {
    const { tx, rights, at, record } = context
    requireInWorkspace(rights, 'signing-key:rotate')
    const confirmedBy = await requireConfirmed(context, confirmed.value)
    const before = await loadSigningKeys(tx)
    const previous = (await loadKeys(tx)).at(-1)
    if (previous === undefined) throw new Error('the installation has no signing key')
    requirePast(input.compromisedOn, at)
    const pair = generateKeyPairSync('ed25519')
    const verifyingKeyPem = pair.publicKey.export({ type: 'spki', format: 'pem' }).toString()
    const next = { fingerprint: nameKey(verifyingKeyPem), since: at.toISOString() }
    // Written before the record that names it: a file that no record names is never used.
    keepSigningKeyFile(next.fingerprint, pair.privateKey.export({ type: 'pkcs8', format: 'pem' }).toString())
    const isCompromised = input.compromisedOn !== ''
    await record({
      action: 'signing-key-rotated',
      subject: SUBJECT,
      details: {
        ...next,
        verifyingKeyPem,
        previousUntil: await findRetirement(tx, previous, at),
        previous: {
          fingerprint: previous.fingerprint,
          verifyingKeyPem: previous.verifyingKeyPem,
          since: previous.since,
        },
        reason: input.reason,
        compromisedAt: isCompromised ? toMoment(input.compromisedOn) : null,
        endorsement: isCompromised ? '' : endorseKey(next, before.signingKeyPem),
        confirmedBy,
      },
    })
    return { fingerprint: next.fingerprint }
  })
}

/** Somebody else may have had a key that was retired before: from then on its signature alone proves nothing. */
export async function reportKeyCompromised(actor: Actor, input: ReportKeyCompromisedInput): Promise<ActResult<null>> {
  await read(actor, async ({ rights }) => requireInWorkspace(rights, 'signing-key:rotate'))
  const confirmed = await outcomeOf(() => confirmPerson(actor, input))
  if (!confirmed.ok) return confirmed
  return write(actor, 'report-key-compromised', input, async (context) => {
    const { tx, rights, at, record } = context
    requireInWorkspace(rights, 'signing-key:rotate')
    const confirmedBy = await requireConfirmed(context, confirmed.value)
    const { fingerprint, reason, compromisedOn } = input
    const key = (await loadKeys(tx)).find((known) => known.fingerprint === fingerprint)
    if (key === undefined) refuseField('fingerprint', 'unknown', 'is not a key of this installation')
    if (key.retiredAt === null) refuseField('fingerprint', 'in-use', 'is the key in use: change the key first')
    requirePast(compromisedOn, at)
    const compromisedAt = toMoment(compromisedOn)
    // A day is only moved back: what was in doubt stays in doubt.
    if (key.compromisedAt !== null && key.compromisedAt <= compromisedAt) {
      refuseField('compromisedOn', 'later', `must be earlier than the day on record, ${key.compromisedAt.slice(0, 10)}`)
    }
    await record({
      action: 'signing-key-compromised',
      subject: SUBJECT,
      details: { fingerprint, compromisedAt, reason, confirmedBy },
    })
    return null
  })
}

function requirePast(day: string, at: Date): void {
  if (day > at.toISOString().slice(0, 10)) refuseField('compromisedOn', 'future', 'is in the future')
}
