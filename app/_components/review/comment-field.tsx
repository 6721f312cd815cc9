'use client'

import { useRef, useState } from 'react'
import { type Control, type FieldPath, type FieldValues, useController } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { TextArea } from '@/app/_components/ui/text-field'
import { findTypedMention } from '@/lib/mail'
import { ChosenFiles } from './chosen-files'
import { useMentionable } from './mention-people'
import type { CommentFiles } from './use-comment-files'

interface CommentFieldProps<TIn extends FieldValues, TOut> {
  control: Control<TIn, unknown, TOut>
  name: FieldPath<TIn>
  label: string
  rows?: number
  hint?: string
  /** The fabricator that takes part in the thread; null is the team only. */
  companyId: string | null
  /** Files that go along: pasted, dropped or chosen. */
  files?: CommentFiles
}

const MOST_OFFERED = 6

function listHints(hasPeople: boolean, takesFiles: boolean): string | undefined {
  const hints = [
    ...(hasPeople ? ['Type @ and a name to notify somebody.'] : []),
    ...(takesFiles ? ['Pictures and files can be pasted or dropped here.'] : []),
  ]
  return hints.length === 0 ? undefined : hints.join(' ')
}

/** Cells of a spreadsheet come as text and as a picture of it: they stay text. A picture that was copied from a page comes without plain text. */
const isText = ({ types }: DataTransfer) => types.includes('text/plain') && types.includes('text/html')

const takeFiles = ({ add }: CommentFiles) => ({
  onPaste: (event: React.ClipboardEvent) => {
    const pasted = [...event.clipboardData.files]
    if (pasted.length === 0 || isText(event.clipboardData)) return
    event.preventDefault()
    add(pasted)
  },
  onDragOver: (event: React.DragEvent) => {
    if (event.dataTransfer.types.includes('Files')) event.preventDefault()
  },
  onDrop: (event: React.DragEvent) => {
    if (!event.dataTransfer.types.includes('Files')) return
    event.preventDefault()
    add([...event.dataTransfer.files])
  },
})

/** Text of a comment. After an `@` it offers the people who see the thread; they are reached with the keyboard. */
export function CommentField<TIn extends FieldValues, TOut>({
  control,
  name,
  companyId,
  hint,
  files,
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
    <div
      ref={frame}
      onKeyUp={noteCaret}
      onClick={noteCaret}
      onInput={noteCaret}
      role="presentation"
      {...(files === undefined ? {} : takeFiles(files))}
    >
      <TextArea
        {...rest}
        name={field.name}
        value={text}
        onChange={field.onChange}
        onBlur={field.onBlur}
        error={fieldState.error?.message}
        hint={hint ?? listHints(people.length > 0, files !== undefined)}
      />
      {files !== undefined && <ChosenFiles chosen={files} />}
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
