import type { Metadata } from 'next'
import { LinkButton } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { previewReset } from '@/lib/data'
import { ResetForm } from './_components/reset-form'

export const metadata: Metadata = { title: 'Set a new password', referrer: 'no-referrer' }

export default async function ResetPasswordPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const offer = await previewReset(token)
  return (
    <div className="page-narrow">
      <PageHead title="Set a new password" {...(offer === null ? {} : { under: `For ${offer.email}.` })} />
      {offer === null ? (
        <>
          <Notice tone="refused">
            <p>This link was already used or has expired. Ask for a new one.</p>
          </Notice>
          <p className="above-wide">
            <LinkButton href={paths.forgotPassword()}>Ask for a new link</LinkButton>
          </p>
        </>
      ) : (
        <ResetForm token={token} />
      )}
    </div>
  )
}
