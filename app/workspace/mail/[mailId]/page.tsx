import type { Metadata } from 'next'
import Link from 'next/link'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { getMail } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { SendAgain } from '../_components/send-again'
import { MAIL_STATE_WORDS } from '../_components/state-words'

export const metadata: Metadata = { title: 'Message' }

export default async function MailMessagePage({ params }: { params: Promise<{ mailId: string }> }) {
  const { mailId } = await params
  const actor = await requireActor(paths.mailMessage(mailId))
  const mail = await readOrNotFound(() => getMail(actor, mailId))
  return (
    <>
      <PageHead
        title={mail.subject}
        over={<Link href={paths.mail()}>Mail</Link>}
        under={`To ${mail.to}`}
        actions={
          mail.maySendAgain ? <SendAgain mailId={mail.id} isUncertain={mail.state === 'uncertain'} /> : undefined
        }
      />
      <PageSection title="State">
        <p>
          {MAIL_STATE_WORDS[mail.state]}
          {mail.sentAt !== null && (
            <>
              {' '}
              on <Timestamp at={mail.sentAt} />
            </>
          )}
          ; written <Timestamp at={mail.createdAt} />; {countOf(mail.attempts, 'attempt')}
          {mail.nextAttemptAt !== null && (
            <>
              ; next attempt from <Timestamp at={mail.nextAttemptAt} />
            </>
          )}
        </p>
        {mail.lastError !== null && <p>{mail.lastError}</p>}
        <p className="small muted">
          Message-ID <code>{mail.messageId}</code>
        </p>
      </PageSection>
      <PageSection title="Text">
        <pre className="mail-text">{mail.text}</pre>
      </PageSection>
    </>
  )
}
