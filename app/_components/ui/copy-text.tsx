'use client'

import { useState } from 'react'
import { Input } from 'react-aria-components/Input'
import { Label } from 'react-aria-components/Label'
import { TextField as AriaTextField } from 'react-aria-components/TextField'
import { Button } from './button'

/** Text to take along, such as a link that is shown once. Where the clipboard cannot be written, the text is selected. */
export function CopyText({ label, text }: { label: string; text: string }) {
  const [state, setState] = useState<'idle' | 'copied' | 'selected'>('idle')
  const copy = async (input: HTMLInputElement | null) => {
    try {
      await navigator.clipboard.writeText(text)
      setState('copied')
    } catch {
      input?.select()
      setState('selected')
    }
  }
  return (
    <AriaTextField value={text} isReadOnly className="field">
      <Label className="field-label">{label}</Label>
      <div className="with-unit">
        <Input className="input" onFocus={(event) => event.currentTarget.select()} />
        <Button
          onPress={(event) => copy(event.target.parentElement?.querySelector('input') ?? null)}
          aria-label={`Copy: ${label}`}
        >
          Copy
        </Button>
      </div>
      <span role="status" className="field-hint">
        {state === 'copied' && 'Copied.'}
        {state === 'selected' && 'Selected: copy it with your keyboard or menu.'}
      </span>
    </AriaTextField>
  )
}
