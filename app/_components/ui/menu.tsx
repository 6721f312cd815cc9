'use client'

import type { ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import { Menu, MenuItem, MenuTrigger } from 'react-aria-components/Menu'
import { Popover } from 'react-aria-components/Popover'

interface PopupMenuProps {
  label: ReactNode
  items: readonly { id: string; label: string; href?: string; onAction?: () => void }[]
}

export function PopupMenu({ label, items }: PopupMenuProps) {
  return (
    <MenuTrigger>
      <Button className="choice">
        {label} <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="popup" placement="bottom end">
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
