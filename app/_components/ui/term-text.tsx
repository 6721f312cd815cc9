'use client'

import Link from 'next/link'
import { Fragment } from 'react'
import { Button } from 'react-aria-components/Button'
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog'
import { Popover } from 'react-aria-components/Popover'
import { paths } from '@/lib/addresses'
import { markTerms, type Term } from '@/lib/engine/glossary'

/** Running text whose terms explain themselves: each once, where it stands first. */
export function TermText({ children }: { children: string }) {
  return markTerms(children).map(({ text, term }, at) =>
    term === null ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one text never change places.
      <Fragment key={at}>{text}</Fragment>
    ) : (
      <Explained key={term.id} term={term}>
        {text}
      </Explained>
    ),
  )
}

function Explained({ term, children }: { term: Term; children: string }) {
  return (
    <DialogTrigger>
      <Button className="term">{children}</Button>
      <Popover className="popup term-note" placement="bottom start">
        <Dialog aria-label={`What “${term.term}” means`}>
          <p>{term.meaning}</p>
          <p className="small">
            <Link href={paths.glossary(term.id)}>Glossary</Link>
          </p>
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}
