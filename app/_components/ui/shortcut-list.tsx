interface Shortcut {
  readonly keys: string
  readonly does: string
}

/** What keys do, declared once; Ctrl is the command key on a Mac. */
const SHORTCUTS = {
  checklist: [
    { keys: 'Alt ↓', does: 'open the next item shown' },
    { keys: 'Alt ↑', does: 'open the item before' },
    { keys: 'Enter', does: 'open or close the item that has the focus' },
  ],
  design: [
    { keys: 'Ctrl S', does: 'save, or propose where you may not save' },
    { keys: 'Ctrl Z', does: 'undo' },
    { keys: 'Ctrl Shift Z or Ctrl Y', does: 'redo' },
    { keys: 'Alt ↑ and Alt ↓', does: 'move the current layer' },
  ],
} as const satisfies Readonly<Record<string, readonly Shortcut[]>>

/** The shortcuts of a page, folded away. */
export function ShortcutList({ of }: { of: keyof typeof SHORTCUTS }) {
  return (
    <details className="small no-print">
      <summary>Keyboard shortcuts</summary>
      <dl className="shortcuts">
        {SHORTCUTS[of].map(({ keys, does }) => (
          <div key={keys}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}
