import 'server-only'
import { log } from '@/lib/config'
import { beginSending, type ClaimedMail, claimMail, type MailWay, noteFailed, noteSent } from '@/lib/data'
import { type Delivery, DeliveryError } from './deliver'

export interface Sent {
  readonly sent: number
  readonly failed: number
}

/**
 * Sends what is due, one message after the other.
 * @param deliveries  the ways there are; messages that may not go by the installation's own way go into the folder
 */
export async function sendDueMail(way: MailWay, deliveries: Readonly<Record<MailWay, Delivery>>): Promise<Sent> {
  const claimed = await claimMail(way)
  const results: boolean[] = []
  for (const via of ['folder', 'smtp'] as const) {
    const mails = claimed.filter((mail) => mail.via === via)
    if (mails.length > 0) results.push(...(await sendAll(deliveries[via], mails)))
  }
  const sent = results.filter((isSent) => isSent).length
  return { sent, failed: results.length - sent }
}

async function sendAll(delivery: Delivery, mails: readonly ClaimedMail[]): Promise<boolean[]> {
  try {
    await delivery.open()
  } catch (error) {
    for (const mail of mails) await fail(mail, error)
    return mails.map(() => false)
  }
  const results: boolean[] = []
  for (const mail of mails) results.push(await sendOne(delivery, mail))
  return results
}

async function sendOne(delivery: Delivery, mail: ClaimedMail): Promise<boolean> {
  if (!(await beginSending(mail))) return false
  try {
    await delivery.send(mail)
  } catch (error) {
    await fail(mail, error)
    return false
  }
  await noteSent(mail)
  return true
}

async function fail(mail: ClaimedMail, error: unknown): Promise<void> {
  if (!(error instanceof DeliveryError)) throw error
  log.warn('message not sent', { mailId: mail.id, failure: error.failure, reason: error.message })
  await noteFailed(mail, error.failure, error.message)
}
