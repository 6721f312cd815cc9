'use client'

import type { ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import { Menu, MenuItem, MenuTrigger } from 'react-aria-components/Menu'
import { Popover } from 'react-aria-components/Popover'

interface PopupMenuProps {
  label: ReactNode
  items: readonly { id: string; label: string; href?: string; onAction?: () => void }[]
  placement?: 'bottom end' | 'top end'
  /** Before it is shown: for items that are worked out then. */
  onOpen?: () => void
}

export function PopupMenu({ label, items, placement = 'bottom end', onOpen }: PopupMenuProps) {
  return (
    <MenuTrigger onOpenChange={(isOpen) => isOpen && onOpen?.()}>
      <Button className="choice">
        {label} <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="popup" placement={placement}>
        <Menu>
          {items.map((item) => (
            <MenuItem
              key={item.id}
              id={item.id}
              className="popup-item"
              {...(item.href === undefined ? {} : { href: item.href })}
              {...(item.onAction === undefined ? {} : { onAction: item.onAction })}
            >
              {item.label}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}
