'use client'

import { lazy, Suspense, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ConfirmDialog, SideDialog } from '@/app/_components/ui/dialog'
import { FileButton } from '@/app/_components/ui/file-button'
import { Notice } from '@/app/_components/ui/notices'
import { saveFile } from '@/app/_components/ui/save-file'
import { Skeleton } from '@/app/_components/ui/skeleton'
import { type Design, formatIssuePath, type Issue, MAX_DESIGN_CHARACTERS, parseDesignBytes } from '@/lib/engine'
import { countOf } from '@/lib/engine/units'
import { useDraft } from '../draft'
import { makeFileStem } from './file-stem'

const StartingList = lazy(() => import('./starting-list'))

/** Import, export and starting constructions. All change the draft only; saving is a separate act, and undo works. */
export function DesignFileActs() {
  const { state, dispatch, isReadOnly } = useDraft()
  const [issues, setIssues] = useState<readonly Issue[]>([])
  const [isChoosing, setChoosing] = useState(false)
  const [pending, setPending] = useState<{ design: Design; from: string } | null>(null)

  const readFile = async (file: File) => {
    // A byte is at most one character, so a file beyond this cannot be a design and is not read at all.
    if (file.size > MAX_DESIGN_CHARACTERS * 4) {
      const message = `${file.name} has ${file.size} bytes; a design document has at most ${MAX_DESIGN_CHARACTERS} characters`
      setIssues([{ code: 'too-large', path: [], message }])
      return
    }
    const parsed = parseDesignBytes(new Uint8Array(await file.arrayBuffer()))
    if (!parsed.ok) {
      setIssues(parsed.issues)
      return
    }
    setIssues([])
    setPending({ design: parsed.value, from: file.name })
  }
  const exportFile = () => {
    const text = `${JSON.stringify(state.design, null, 2)}\n`
    saveFile(`${makeFileStem(state.design.name)}.json`, text, 'application/json')
  }
  return (
    <>
      {!isReadOnly && (
        <>
          <Button onPress={() => setChoosing(true)}>Starting constructions</Button>
          <FileButton
            label="Import a design file"
            inputLabel="Design file to import"
            accept=".json,application/json"
            onChoose={readFile}
          />
        </>
      )}
      <Button onPress={exportFile}>Export as shown</Button>
      {issues.length > 0 && (
        <Notice tone="refused" role="alert">
          <p>The file was not imported. Nothing was changed.</p>
          <ul>
            {issues.slice(0, 12).map((issue) => (
              <li key={`${formatIssuePath(issue.path)} ${issue.message}`}>
                {issue.path.length > 0 && <code>{formatIssuePath(issue.path)}</code>} {issue.message}
              </li>
            ))}
            {issues.length > 12 && <li>and {issues.length - 12} more</li>}
          </ul>
        </Notice>
      )}
      <SideDialog title="Starting constructions" isOpen={isChoosing} onOpenChange={setChoosing}>
        <Suspense fallback={<Skeleton />}>
          <StartingList
            designName={state.design.name}
            onUse={(made, from) => {
              setChoosing(false)
              // Brief and own materials are the part's, not the construction's: they stay.
              setPending({ design: { ...made, brief: state.design.brief, materials: state.design.materials }, from })
            }}
          />
        </Suspense>
      </SideDialog>
      <ConfirmDialog
        title={`Replace with ${pending?.from ?? ''}?`}
        isOpen={pending !== null}
        onOpenChange={(isOpen) => {
          if (!isOpen) setPending(null)
        }}
        confirmLabel="Replace"
        onConfirm={() => {
          if (pending !== null) dispatch({ type: 'replace', design: pending.design })
          setPending(null)
        }}
      >
        <p>
          {pending === null
            ? ''
            : `It brings ${countOf(pending.design.construction.layers.length, 'layer')}, ${countOf(pending.design.construction.zones.length, 'zone')} and ${countOf(pending.design.bends.length, 'bend')} in place of the current ones. Nothing is stored until you save, and you can undo it.`}
        </p>
      </ConfirmDialog>
    </>
  )
}
