'use client'

import { useRef, useState } from 'react'
import { type Control, type FieldPath, type FieldValues, useController } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { TextArea } from '@/app/_components/ui/text-field'
import { findTypedMention } from '@/lib/mail'
import { useMentionable } from './mention-people'

interface CommentFieldProps<TIn extends FieldValues, TOut> {
  control: Control<TIn, unknown, TOut>
  name: FieldPath<TIn>
  label: string
  rows?: number
  hint?: string
  /** The fabricator that takes part in the thread; null is the team only. */
  companyId: string | null
}

const MOST_OFFERED = 6

/** Text of a comment. After an `@` it offers the people who see the thread; they are reached with the keyboard. */
export function CommentField<TIn extends FieldValues, TOut>({
  control,
  name,
  companyId,
  hint,
  ...rest
}: CommentFieldProps<TIn, TOut>) {
  const { field, fieldState } = useController({ control, name })
  const text = typeof field.value === 'string' ? field.value : ''
  const people = useMentionable(companyId)
  const frame = useRef<HTMLDivElement>(null)
  const [caret, setCaret] = useState(0)
  const typed = findTypedMention(text, caret)
  const wanted = typed?.typed.toLowerCase() ?? ''
  const offered =
    typed === null
      ? []
      : people
          .filter(({ name: own }) => own.toLowerCase() !== wanted)
          .filter(({ name: own }) => [own, ...own.split(' ')].some((part) => part.toLowerCase().startsWith(wanted)))
          .slice(0, MOST_OFFERED)

  const noteCaret = (event: React.SyntheticEvent) => {
    if (event.target instanceof HTMLTextAreaElement) setCaret(event.target.selectionStart)
  }
  const mention = (own: string) => {
    if (typed === null) return
    const before = `${text.slice(0, typed.start)}@${own} `
    field.onChange(before + text.slice(caret).replace(/^ /, ''))
    setCaret(before.length)
    const area = frame.current?.querySelector('textarea')
    requestAnimationFrame(() => {
      area?.focus()
      area?.setSelectionRange(before.length, before.length)
    })
  }

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only notes where the caret of the field inside stands
    <div ref={frame} onKeyUp={noteCaret} onClick={noteCaret} onInput={noteCaret} role="presentation">
      <TextArea
        {...rest}
        name={field.name}
        value={text}
        onChange={field.onChange}
        onBlur={field.onBlur}
        error={fieldState.error?.message}
        hint={hint ?? (people.length > 0 ? 'Type @ and a name to notify somebody.' : undefined)}
      />
      <span role="status" className="sr-only">
        {offered.length > 0 && `${offered.length} people to mention; Tab reaches them.`}
      </span>
      {offered.length > 0 && (
        <fieldset className="filter-row">
          <legend className="sr-only">Mention</legend>
          {offered.map((person) => (
            <Button key={person.id} weight="quiet" onPress={() => mention(person.name)}>
              @{person.name}
            </Button>
          ))}
        </fieldset>
      )}
    </div>
  )
}
