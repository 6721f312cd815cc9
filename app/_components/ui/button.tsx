'use client'

import NextLink from 'next/link'
import type { ReactNode } from 'react'
import { Button as AriaButton, type ButtonProps as AriaButtonProps } from 'react-aria-components/Button'

/** `strong`: the one next act of a screen; `grave`: cannot be taken back lightly; `quiet`: looks like a link. */
export type ButtonWeight = 'plain' | 'strong' | 'grave' | 'quiet'

interface ButtonProps extends Omit<AriaButtonProps, 'className' | 'style' | 'children'> {
  weight?: ButtonWeight
  /** Said in place of the label while the act is under way. */
  pendingLabel?: string
  children: ReactNode
}

/** A button that stays focusable and says so while its act is under way. */
export function Button({ weight = 'plain', pendingLabel = 'Working…', children, isPending, ...rest }: ButtonProps) {
  return (
    <AriaButton {...rest} isPending={isPending ?? false} className="button" data-weight={weight}>
      {isPending ? pendingLabel : children}
    </AriaButton>
  )
}

interface LinkButtonProps {
  href: string
  weight?: ButtonWeight
  /** Set for files: the browser saves instead of navigating. */
  download?: boolean
  children: ReactNode
}

/** A link that reads as the next act of a screen. */
export function LinkButton({ href, weight = 'plain', download = false, children }: LinkButtonProps) {
  if (download) {
    return (
      <a href={href} download className="button" data-weight={weight}>
        {children}
      </a>
    )
  }
  return (
    <NextLink href={href} className="button" data-weight={weight}>
      {children}
    </NextLink>
  )
}
