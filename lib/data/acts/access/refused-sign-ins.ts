import 'server-only'
import { now } from '@/lib/config'
import { sha256Hex } from '@/lib/review'
import { inWriteTransaction } from '../../consequences/write'
import type { Visit } from '../../records/visit'
import { RefusalError } from '../../store/errors'
import { noteSignIn } from './access-notes'

/** Who was meant, as far as anybody can tell. */
interface Meant {
  /** Null where the address has no account. */
  readonly userId: string | null
  /** What was typed as the address, or what stands for it; kept as a hash, since it may be a password in the wrong field. */
  readonly subject: string
}

const KEPT_MS = 400 * 86_400_000

/**
 * Runs a sign-in and keeps a line of each that was refused, in a table of its own: strangers must not be able to fill the
 * trail. What the limit of attempts turns away is not among it, so the limit bounds the lines as well; that it was reached is
 * in the trail. An unknown address leaves a line as a known one does, after the same time.
 */
export async function notingRefusedSignIn<T>(
  visit: Visit,
  findMeant: () => Promise<Meant>,
  run: () => Promise<T>,
): Promise<T> {
  try {
    return await run()
  } catch (error) {
    if (error instanceof RefusalError) {
      const { refusal } = error
      const reason = refusal.kind === 'invalid' ? String(refusal.issues[0]?.path[0] ?? 'entry') : refusal.kind
      if (refusal.kind === 'invalid' || refusal.kind === 'clash') await keep(visit, await findMeant(), reason)
    }
    throw error
  }
}

async function keep({ sourceKey, device }: Visit, { userId, subject }: Meant, reason: string): Promise<void> {
  await inWriteTransaction(async (tx) => {
    const at = now()
    await tx.refusedSignIn.deleteMany({ where: { at: { lt: new Date(at.getTime() - KEPT_MS) } } })
    await tx.refusedSignIn.create({
      data: { at, userId, subjectKey: sha256Hex(subject), sourceKey, reason, device },
    })
    const user = userId === null ? null : await tx.user.findUnique({ where: { id: userId } })
    if (user === null) return
    await noteSignIn(tx, user, { kind: 'sign-in-refused', what: reason, visit: { sourceKey, device }, at })
  })
}
