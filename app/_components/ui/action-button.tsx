'use client'

import { type ReactNode, useState } from 'react'
import type { Action } from './action-result'
import { Button, type ButtonWeight } from './button'
import { ConfirmDialog } from './dialog'
import { FormError } from './form-error'
import { useAction } from './use-action'

interface ActionButtonProps<T> {
  action: Action<T>
  input: Record<string, unknown>
  children: ReactNode
  weight?: ButtonWeight
  pendingLabel?: string
  /** Asks first, saying what will happen. */
  confirm?: { title: string; text: ReactNode; label: string }
  onDone?: (value: T) => void
}

/** One press, one act; a refusal is shown beside the button. */
export function ActionButton<T>({
  action,
  input,
  children,
  weight = 'plain',
  pendingLabel,
  confirm,
  onDone,
}: ActionButtonProps<T>) {
  const { send, isPending, refusal } = useAction(action)
  const [isAsking, setIsAsking] = useState(false)
  const act = () =>
    send(input, (value) => {
      setIsAsking(false)
      onDone?.(value)
    })
  return (
    <>
      <Button
        weight={weight}
        isPending={isPending && confirm === undefined}
        {...(pendingLabel === undefined ? {} : { pendingLabel })}
        onPress={() => (confirm === undefined ? act() : setIsAsking(true))}
      >
        {children}
      </Button>
      {confirm === undefined ? (
        <FormError refusal={refusal} />
      ) : (
        <ConfirmDialog
          title={confirm.title}
          isOpen={isAsking}
          onOpenChange={setIsAsking}
          confirmLabel={confirm.label}
          weight={weight === 'grave' ? 'grave' : 'strong'}
          isPending={isPending}
          onConfirm={act}
        >
          <div>{confirm.text}</div>
          <FormError refusal={refusal} />
        </ConfirmDialog>
      )}
    </>
  )
}
