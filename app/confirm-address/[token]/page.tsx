import type { Metadata } from 'next'
import { Notice } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { previewAddressChange } from '@/lib/data'
import { ConfirmAddress } from './_components/confirm-address'

export const metadata: Metadata = { title: 'Confirm your address', referrer: 'no-referrer' }

/** Shown by a link, done by a button: programs that open links in messages must not change anything. */
export default async function ConfirmAddressPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const offer = await previewAddressChange(token)
  return (
    <div className="page-narrow">
      <PageHead title="Confirm your address" />
      <ConfirmAddress token={token} email={offer?.email ?? null}>
        <Notice tone="refused">
          <p>This link was already used or has expired. Ask for a new one on your account page.</p>
        </Notice>
      </ConfirmAddress>
    </div>
  )
}
