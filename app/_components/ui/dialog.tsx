'use client'

import type { ReactNode } from 'react'
import { Dialog } from 'react-aria-components/Dialog'
import { Heading } from 'react-aria-components/Heading'
import { Modal, ModalOverlay } from 'react-aria-components/Modal'
import { Button, type ButtonWeight } from './button'

interface SideDialogProps {
  title: string
  isOpen: boolean
  onOpenChange: (isOpen: boolean) => void
  /** While an act is under way the dialog cannot be dismissed, so that its answer is seen. */
  isBusy?: boolean
  children: ReactNode
}

export function SideDialog({ title, isOpen, onOpenChange, isBusy = false, children }: SideDialogProps) {
  return (
    <ModalOverlay
      isOpen={isOpen}
      onOpenChange={onOpenChange}
      isDismissable={!isBusy}
      isKeyboardDismissDisabled={isBusy}
      className="veil"
    >
      <Modal className="sheet">
        <Dialog className="stack">
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

interface ConfirmDialogProps {
  title: string
  isOpen: boolean
  onOpenChange: (isOpen: boolean) => void
  confirmLabel: string
  weight?: ButtonWeight
  isPending?: boolean
  onConfirm: () => void
  /** What will happen, in words. */
  children: ReactNode
}

export function ConfirmDialog({
  confirmLabel,
  weight = 'strong',
  isPending = false,
  onConfirm,
  children,
  ...rest
}: ConfirmDialogProps) {
  return (
    <SideDialog {...rest} isBusy={isPending}>
      {children}
      <div className="row">
        <Button weight={weight} isPending={isPending} onPress={onConfirm}>
          {confirmLabel}
        </Button>
        <Button onPress={() => rest.onOpenChange(false)} isDisabled={isPending}>
          Cancel
        </Button>
      </div>
    </SideDialog>
  )
}
