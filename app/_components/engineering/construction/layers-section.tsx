'use client'

import Link from 'next/link'
import { lazy, Suspense, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { PageSection } from '@/app/_components/ui/section'
import { ShortcutList } from '@/app/_components/ui/shortcut-list'
import { Skeleton } from '@/app/_components/ui/skeleton'
import { paths } from '@/lib/addresses'
import { useDraft } from '../draft'
import { DesignFileActs } from './design-file-acts'
import { LayerTable } from './layer-table'
import { SHEET_MISREAD } from './sheet-misread'

const LayerSheet = lazy(() => import('./layer-sheet'))

const VIEWS = [
  { value: 'form', label: 'Form' },
  { value: 'sheet', label: 'Sheet' },
] as const
type View = (typeof VIEWS)[number]['value']

/** The layers as a form, a field for each value, or as a sheet, which takes whole tables. */
export function LayersSection() {
  const [view, setView] = useState<View>('form')
  const { state, stored } = useDraft()
  // The form has no place for text that cannot be read: it would be lost.
  const isHeld = state.misread[SHEET_MISREAD] !== undefined
  return (
    <PageSection title="Layers" actions={<DesignFileActs />}>
      <div className="row no-print">
        {isHeld ? (
          <span className="small muted">Correct or discard the marked cells to go back to the form.</span>
        ) : (
          <ChoiceGroup<View> label="Layers as" options={VIEWS} value={view} onChange={setView} />
        )}
      </div>
      <ShortcutList of="design" />
      {stored.mayEdit && (
        <p className="small no-print">
          <Link href={paths.library()}>Materials and constructions of the workspace</Link>
        </p>
      )}
      {view === 'form' ? (
        <LayerTable />
      ) : (
        <Suspense fallback={<Skeleton />}>
          <LayerSheet />
        </Suspense>
      )}
    </PageSection>
  )
}
