'use client'

import { useEffect, useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { EmptyState } from '@/app/_components/ui/notices'
import { ShortcutList } from '@/app/_components/ui/shortcut-list'
import { TextField } from '@/app/_components/ui/text-field'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { RevisionView } from '@/lib/data'
import { ITEM_SECTION_WORDS, ITEM_SECTIONS } from '@/lib/engine/results'
import { BulkAnswer } from './bulk-answer'
import { ChecklistFile } from './checklist-file'
import { ChecklistItem, type ItemContext } from './checklist-item'
import type { ItemText } from './item-text'
import { useItemKeys } from './use-item-keys'
import { countVerdicts, VerdictCounts } from './verdict-counts'

const FILTERS = [
  { value: 'all', label: 'All' },
  { value: 'unanswered', label: 'Unanswered' },
  { value: 'failing', label: 'Failing or thin' },
  { value: 'cannot-tell', label: 'Cannot tell' },
  { value: 'not-computed', label: 'Input missing' },
  { value: 'mine', label: 'Mine to answer' },
  { value: 'first', label: '30-minute review' },
] as const

type Filter = (typeof FILTERS)[number]['value']
type Item = RevisionView['items'][number]

interface ChecklistProps extends ItemContext {
  items: readonly Item[]
  texts: Readonly<Record<string, ItemText>>
  initialFilter: string
  /** The questions of a first review, with their items. */
  firstQuestions: readonly { readonly question: string; readonly itemIds: readonly string[] }[]
}

/** The three sections of the checklist. The filter lives in the address, so that a filtered list can be passed on. */
export function Checklist({ items, texts, initialFilter, firstQuestions, ...context }: ChecklistProps) {
  const [filter, setFilter] = useState<Filter>(
    () => FILTERS.find((known) => known.value === initialFilter)?.value ?? 'all',
  )
  const [words, setWords] = useState('')
  const [openId, setOpenId] = useState<string | null>(null)
  /** Ids of the items that are to get one answer; null while they are answered one by one. */
  const [chosenIds, setChosenIds] = useState<ReadonlySet<string> | null>(null)

  useEffect(() => {
    const openFromAddress = () => {
      const id = decodeURIComponent(window.location.hash).replace(/^#item-/, '')
      if (id === '' || id === window.location.hash) return
      setFilter('all')
      setOpenId(id)
      requestAnimationFrame(() => document.getElementById(`item-${id}`)?.scrollIntoView({ block: 'start' }))
    }
    openFromAddress()
    window.addEventListener('hashchange', openFromAddress)
    return () => window.removeEventListener('hashchange', openFromAddress)
  }, [])

  const changeFilter = (next: Filter) => {
    setFilter(next)
    const address = new URL(window.location.href)
    if (next === 'all') address.searchParams.delete('show')
    else address.searchParams.set('show', next)
    address.hash = ''
    window.history.replaceState(null, '', address)
  }

  const shown = useMemo(() => {
    const wanted = words.trim().toLowerCase()
    return items.filter((item) => {
      const text = texts[item.itemId]
      if (text === undefined || !passes(item, filter)) return false
      if (filter === 'first' && !firstQuestions.some(({ itemIds }) => itemIds.includes(item.itemId))) return false
      return wanted === '' || `${text.question} ${text.why} ${item.result.headline}`.toLowerCase().includes(wanted)
    })
  }, [items, texts, filter, words, firstQuestions])

  const inOrder = useMemo(
    () => ITEM_SECTIONS.flatMap((section) => shown.filter(({ itemId }) => texts[itemId]?.section === section)),
    [shown, texts],
  )
  useItemKeys(inOrder, openId, setOpenId)
  const chooseItem = (itemId: string, isChosen: boolean) =>
    setChosenIds((ids) => {
      const next = new Set(ids)
      if (isChosen) next.add(itemId)
      else next.delete(itemId)
      return next
    })

  return (
    <>
      <div className="row filters no-print">
        <ChoiceGroup label="Which items" options={FILTERS} value={filter} onChange={changeFilter} />
        <TextField label="Find in items" type="search" value={words} onChange={setWords} />
        <ChecklistFile items={inOrder} texts={texts} citations={context.citations} />
        {chosenIds === null && items.some(({ mayAnswer }) => mayAnswer) && (
          <Button onPress={() => setChosenIds(new Set())}>Answer several</Button>
        )}
      </div>
      <ShortcutList of="checklist" />
      {chosenIds !== null && (
        <BulkAnswer
          revisionId={context.revisionId}
          chosen={inOrder.filter(({ itemId, mayAnswer }) => mayAnswer && chosenIds.has(itemId))}
          open={inOrder.filter(({ state, mayAnswer }) => mayAnswer && state === 'open')}
          onChoose={(chosen) => setChosenIds(new Set(chosen.map(({ itemId }) => itemId)))}
          onLeave={() => setChosenIds(null)}
        />
      )}
      {filter === 'first' && <FirstQuestions questions={firstQuestions} items={items} texts={texts} />}
      {shown.length === 0 && <EmptyState>No checklist item matches this filter.</EmptyState>}
      {ITEM_SECTIONS.map((section) => {
        const inSection = inOrder.filter((item) => texts[item.itemId]?.section === section)
        if (inSection.length === 0) return null
        return (
          <section key={section} className="section" aria-labelledby={`section-${section}`}>
            <div className="section-head">
              <h2 id={`section-${section}`}>{ITEM_SECTION_WORDS[section]}</h2>
              <VerdictCounts counts={countVerdicts(inSection)} />
            </div>
            {inSection.map((item) => {
              const text = texts[item.itemId]
              return text === undefined ? null : (
                <ChecklistItem
                  key={item.itemId}
                  item={item}
                  text={text}
                  context={context}
                  isOpen={openId === item.itemId}
                  isChosen={chosenIds === null || !item.mayAnswer ? null : chosenIds.has(item.itemId)}
                  onChoose={chooseItem}
                  onToggle={(isOpen) => setOpenId(isOpen ? item.itemId : null)}
                />
              )
            })}
          </section>
        )
      })}
    </>
  )
}

type FirstQuestionsProps = Pick<ChecklistProps, 'items' | 'texts'> & { questions: ChecklistProps['firstQuestions'] }

/** The order in which a first review asks, with where each question stands; the items follow below. */
function FirstQuestions({ questions, items, texts }: FirstQuestionsProps) {
  return (
    <section className="section" aria-labelledby="first-questions">
      <div className="section-head">
        <h2 id="first-questions">Fifteen questions, two minutes each</h2>
      </div>
      <ol>
        {questions.map(({ question, itemIds }) => (
          <li key={question}>
            {question}{' '}
            {items
              .filter(({ itemId }) => itemIds.includes(itemId))
              .map(({ itemId, result }) => (
                <span key={itemId} className="small">
                  <VerdictMark verdict={result.verdict} word={texts[itemId]?.question ?? itemId} />{' '}
                </span>
              ))}
          </li>
        ))}
      </ol>
    </section>
  )
}

function passes(item: Item, filter: Filter): boolean {
  switch (filter) {
    case 'all':
    case 'first':
      return true
    case 'unanswered':
      return item.state === 'open'
    case 'failing':
      return item.result.verdict === 'fails' || item.result.verdict === 'thin-margin' || item.state === 'concern'
    case 'cannot-tell':
    case 'not-computed':
      return item.result.verdict === filter
    case 'mine':
      return item.state === 'open' && item.mayAnswer
  }
}
