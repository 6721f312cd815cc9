import type { Metadata } from 'next'
import { PageHead } from '@/app/_components/ui/section'
import { ForgotForm } from './_components/forgot-form'

export const metadata: Metadata = { title: 'Forgot your password' }

export default function ForgotPasswordPage() {
  return (
    <div className="page-narrow">
      <PageHead
        title="Forgot your password"
        under="A link to set a new one is sent to your address. If you cannot read your mail, ask an administrator of the workspace for a link."
      />
      <ForgotForm />
    </div>
  )
}
