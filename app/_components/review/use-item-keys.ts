import { useEffect } from 'react'

/** Where an arrow belongs to the text or the list that is being edited. */
const OWN_ARROWS = 'input, textarea, select, [contenteditable], [role="listbox"], [role="menu"]'

/** Alt with an arrow opens the next item shown, or the one before, and puts the focus on its line. */
export function useItemKeys(
  items: readonly { readonly itemId: string }[],
  openId: string | null,
  open: (itemId: string) => void,
): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (!event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented) return
      const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
      if (step === 0 || (event.target instanceof Element && event.target.closest(OWN_ARROWS) !== null)) return
      const at = items.findIndex(({ itemId }) => itemId === openId)
      const next = at === -1 ? items.at(step === 1 ? 0 : -1) : items[at + step]
      if (next === undefined) return
      event.preventDefault()
      open(next.itemId)
      requestAnimationFrame(() => {
        const line = document.getElementById(`item-${next.itemId}`)
        line?.scrollIntoView({ block: 'start' })
        line?.querySelector('button')?.focus({ preventScroll: true })
      })
    }
    document.addEventListener('keydown', onKeyDown)
    return () => document.removeEventListener('keydown', onKeyDown)
  }, [items, openId, open])
}
