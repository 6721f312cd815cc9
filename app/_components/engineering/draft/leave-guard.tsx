'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { countOf } from '@/lib/engine/units'
import { useDraft } from './draft-context'
import { shareDraft } from './draft-pages'

/**
 * Asks before unsaved changes are left: by the browser on closing, by a dialog on links inside the application.
 *
 * @param save  null for somebody who may not: there is then nothing to do but go or stay
 */
export function LeaveGuard({ save }: { save: (() => Promise<boolean>) | null }) {
  const { isChanged, state } = useDraft()
  const unreadCount = Object.keys(state.misread).length
  const isAllRead = unreadCount === 0
  const router = useRouter()
  const [target, setTarget] = useState<string | null>(null)
  const [isSaving, setSaving] = useState(false)

  useEffect(() => {
    if (!isChanged) return
    const onBeforeUnload = (event: BeforeUnloadEvent) => event.preventDefault()
    const onClick = (event: MouseEvent) => {
      if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey) return
      const link = event.target instanceof Element ? event.target.closest('a[href]') : null
      if (!(link instanceof HTMLAnchorElement) || link.target === '_blank' || link.hasAttribute('download')) return
      const url = new URL(link.href)
      if (url.origin !== window.location.origin || url.pathname === window.location.pathname) return
      // The draft goes along; what cannot be read stays behind with its field.
      if (isAllRead && shareDraft(window.location.pathname, url.pathname)) return
      event.preventDefault()
      event.stopPropagation()
      setTarget(url.pathname + url.search + url.hash)
    }
    window.addEventListener('beforeunload', onBeforeUnload)
    document.addEventListener('click', onClick, { capture: true })
    return () => {
      window.removeEventListener('beforeunload', onBeforeUnload)
      document.removeEventListener('click', onClick, { capture: true })
    }
  }, [isChanged, isAllRead])

  const go = () => {
    if (target !== null) router.push(target)
    setTarget(null)
  }
  return (
    <SideDialog
      title="Leave with unsaved changes?"
      isOpen={target !== null}
      onOpenChange={(isOpen) => {
        if (!isOpen) setTarget(null)
      }}
      isBusy={isSaving}
    >
      <p>
        Your changes to the design are not stored yet. If you leave without saving, only this browser tab keeps them.
      </p>
      {!isAllRead && <p>{countOf(unreadCount, 'entry', 'entries')} that cannot be read will be lost.</p>}
      <div className="row">
        {save !== null && (
          <Button
            weight="strong"
            isPending={isSaving}
            pendingLabel="Saving…"
            onPress={async () => {
              setSaving(true)
              const isStored = await save()
              setSaving(false)
              if (isStored) go()
              else setTarget(null)
            }}
          >
            Save and leave
          </Button>
        )}
        <Button onPress={go} isDisabled={isSaving}>
          Leave without saving
        </Button>
        <Button onPress={() => setTarget(null)} isDisabled={isSaving}>
          Stay
        </Button>
      </div>
    </SideDialog>
  )
}
