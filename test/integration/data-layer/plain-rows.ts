/**
 * Rows for tests of the databases themselves, in tables that the trail does not vouch for: the others are written through
 * the application's own writing transaction alone.
 */
export const AT = new Date('2026-03-02T08:00:00.000Z')

/** For `resetRequest`: a row that is told apart by its name. */
export const named = (email: string) => ({ email, at: AT })

/** For `mailMessage`: a row whose `attempts` are counted up. */
export const COUNTED = {
  id: 'counted',
  dedupeKey: 'counted',
  kind: 'digest',
  recipientName: 'Nobody',
  address: 'nobody@quillmoor.example',
  subject: 'Counted',
  bodyText: '',
  bodyHtml: '',
  messageId: '<counted@quillmoor.example>',
  state: 'left-out',
  attempts: 0,
  nextAttemptAt: AT,
  createdAt: AT,
}
