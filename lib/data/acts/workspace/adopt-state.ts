import 'server-only'
import { now } from '@/lib/config'
import { appendToTrail, readTrailRow } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import type { TransactionClient } from '../../store/client'
import { VOUCHED_MODELS } from '../../store/vouched/models'
import { readRowHashes } from '../../store/vouched/row-hash'
import { ADOPTED_ACTION, beginsWithWorkspace, readRows } from '../../store/vouched/state-check'
import { getWriting, noteTouched } from '../../store/vouched/writing'

/**
 * Takes into the trail what was there before records carried hashes, as found: from then on a change of it shows, and a
 * row that no record tells of is one that somebody put there. The check goes on counting such rows apart, since nothing
 * says what they were before. Done once, when the server starts on a database from an older version.
 *
 * @returns whether there was anything to take in
 */
export function adoptOlderState(): Promise<boolean> {
  return inWriteTransaction(async (tx) => {
    const first = await tx.trailRecord.findFirst({ orderBy: { sequence: 'asc' } })
    // A trail that was emptied is a fault for the check to name, and not to be made good here.
    if (first === null || !beginsWithWorkspace(first) || readRowHashes(readTrailRow(first)) !== null) return false
    if ((await tx.trailRecord.findFirst({ where: { action: ADOPTED_ACTION } })) !== null) return false
    await takeAllAsFound(tx)
    return true
  })
}

/** Everything as it is now, in one record of its own. Inside a write transaction. */
export async function takeAllAsFound(tx: TransactionClient): Promise<void> {
  const writing = getWriting()
  if (writing === null) throw new Error('the state is taken into the trail through inWriteTransaction alone')
  for (const vouched of VOUCHED_MODELS) {
    const fault = await readRows(tx, vouched, (row) =>
      noteTouched(writing, vouched.model, row[vouched.key] as string | number),
    )
    if (fault !== null) throw new Error(`the table ${vouched.model} cannot be read: ${fault}`)
  }
  await appendToTrail(
    tx,
    now(),
    { userId: null, name: 'Bendworthy' },
    { action: ADOPTED_ACTION, subject: { kind: 'trail', id: 'state' } },
  )
}
