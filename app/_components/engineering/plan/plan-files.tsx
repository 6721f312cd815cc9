'use client'

import { lazy, Suspense, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FileButton } from '@/app/_components/ui/file-button'
import { saveFile } from '@/app/_components/ui/save-file'
import { Skeleton } from '@/app/_components/ui/skeleton'
import { useDraft } from '../draft'
import { planOf } from './additions'

const ImportForm = lazy(() => import('./import-form'))

/** Drawing files in and out. What is taken over changes the draft only; saving is a separate act, and undo works. */
export function PlanFiles() {
  const { state, isReadOnly } = useDraft()
  const [file, setFile] = useState<{ readonly name: string; readonly bytes: Uint8Array } | null>(null)
  const plan = planOf(state.design)
  const save = async (kind: 'dxf' | 'svg') => {
    const { planAsDxf, planAsSvg } = await import('@/lib/plan/exchange')
    const diameters = new Map(state.design.features.holes.map(({ id, drillMm }) => [id, drillMm]))
    const text = kind === 'dxf' ? planAsDxf(plan, diameters) : planAsSvg(plan, diameters)
    saveFile(`plan.${kind}`, text, kind === 'dxf' ? 'image/vnd.dxf' : 'image/svg+xml')
  }
  return (
    <>
      {!isReadOnly && (
        <FileButton
          label="Import DXF or SVG"
          inputLabel="Drawing file to import"
          accept=".dxf,.svg,image/svg+xml"
          onChoose={async (chosen) => setFile({ name: chosen.name, bytes: new Uint8Array(await chosen.arrayBuffer()) })}
        />
      )}
      <Button onPress={() => void save('dxf')} isDisabled={plan.outline === null}>
        Export DXF
      </Button>
      <Button onPress={() => void save('svg')} isDisabled={plan.outline === null}>
        Export SVG
      </Button>
      <SideDialog
        title={`Import ${file?.name ?? ''}`}
        isOpen={file !== null}
        onOpenChange={(isOpen) => !isOpen && setFile(null)}
      >
        {file !== null && (
          <Suspense fallback={<Skeleton />}>
            <ImportForm name={file.name} bytes={file.bytes} onDone={() => setFile(null)} />
          </Suspense>
        )}
      </SideDialog>
    </>
  )
}
