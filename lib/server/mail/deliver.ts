import 'server-only'
import { mkdir } from 'node:fs/promises'
import path from 'node:path'
import { createTransport } from 'nodemailer'
import { getSettings, writeWhole } from '@/lib/config'
import type { ClaimedMail, MailFailure, MailWay } from '@/lib/data'
import { buildMessage, makeMessageOptions } from './build-message'

/** Thrown when a message did not go out, or may not have. */
export class DeliveryError extends Error {
  constructor(
    readonly failure: MailFailure,
    message: string,
  ) {
    super(message)
    this.name = 'DeliveryError'
  }
}

/** One way for messages to leave. */
export interface Delivery {
  readonly way: MailWay
  /** Nothing is handed over yet. @throws DeliveryError when nothing can be at the moment */
  readonly open: () => Promise<void>
  /** @throws DeliveryError */
  readonly send: (mail: ClaimedMail) => Promise<void>
}

/** Into `mail` of the data folder, a file each, under a name that a second attempt finds again. */
export function deliverToFolder(): Delivery {
  const { dataFolder, mailFrom } = getSettings()
  const folder = path.join(/* turbopackIgnore: true */ dataFolder, 'mail')
  return {
    way: 'folder',
    open: async () => {
      await mkdir(folder, { recursive: true, mode: 0o700 })
    },
    send: async (mail) => {
      const target = path.join(/* turbopackIgnore: true */ folder, makeFileName(mail))
      await writeWhole(target, await buildMessage(mail, mailFrom)).catch((error: unknown) => {
        throw new DeliveryError('later', `the message could not be written: ${describeError(error)}`)
      })
    },
  }
}

function makeFileName({ id, kind, createdAt }: ClaimedMail): string {
  const at = createdAt.toISOString().replaceAll(/[-:]|\.\d+/g, '')
  return `${at}-${kind}-${id.slice(0, 8)}.eml`
}

/** In all well below the time that a claim lasts. */
const TIMEOUTS_MS = { connectionTimeout: 20_000, greetingTimeout: 20_000, socketTimeout: 60_000, dnsTimeout: 20_000 }

/** By SMTP (RFC 5321), to the server of the settings. */
export function deliverBySmtp(smtpUrl: string): Delivery {
  const { mailFrom } = getSettings()
  const transport = createTransport({ url: smtpUrl, ...TIMEOUTS_MS })
  return {
    way: 'smtp',
    open: async () => {
      await transport.verify().catch((error: unknown) => {
        throw new DeliveryError('later', `the mail server cannot be used: ${describeError(error)}`)
      })
    },
    send: async (mail) => {
      await transport.sendMail(makeMessageOptions(mail, mailFrom)).catch((error: unknown) => {
        throw new DeliveryError(judge(error), describeError(error))
      })
    },
  }
}

interface SmtpFailure {
  /** The reply's code, where there was a reply. */
  readonly responseCode?: number
  /** The library's word for what went wrong: `EDNS`, `EENVELOPE`, `EAUTH`, `ECONNECTION`, `ESOCKET`, `ETIMEDOUT`. */
  readonly code?: string
  /** What was under way: `MAIL FROM`, `RCPT TO`, `DATA`; `CONN` for whatever befalls the connection, at any moment. */
  readonly command?: string
  /** Of an error of the system's own. */
  readonly syscall?: string
  readonly message?: string
}

/**
 * RFC 5321 (2008), 4.2.1: 4xx is for now, 5xx for good. Where the connection ended without a word after it was made, the
 * message may have been taken (6.1 of the same), and nobody knows.
 */
function judge(error: unknown): MailFailure {
  const { responseCode, code, command, syscall, message } = error as SmtpFailure
  if (responseCode !== undefined) {
    const isAboutMessage = command !== undefined && /^(MAIL FROM|RCPT TO|DATA)/.test(command)
    return responseCode >= 500 && isAboutMessage ? 'refused' : 'later'
  }
  const isBeforeConnection =
    code === 'EDNS' ||
    syscall === 'connect' ||
    message === 'Connection timeout' ||
    message === 'Greeting never received'
  const isBeforeMessage = command !== undefined && /^(STARTTLS|EHLO|HELO|AUTH|MAIL FROM|RCPT TO)/.test(command)
  return isBeforeConnection || isBeforeMessage ? 'later' : 'uncertain'
}

function describeError(error: unknown): string {
  return error instanceof Error ? error.message.replaceAll(/\s+/g, ' ') : String(error)
}
