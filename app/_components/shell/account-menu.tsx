'use client'

import { useRouter } from 'next/navigation'
import { signOut } from 'next-auth/react'
import { PopupMenu } from '@/app/_components/ui/menu'
import { paths } from '@/lib/addresses'

export function AccountMenu({ name }: { name: string }) {
  const router = useRouter()
  return (
    <PopupMenu
      label={name}
      items={[
        { id: 'account', label: 'Account', onAction: () => router.push(paths.account()) },
        { id: 'sign-out', label: 'Sign out', onAction: () => signOut({ callbackUrl: paths.signIn() }) },
      ]}
    />
  )
}
