'use client'

import { PageSection } from '@/app/_components/ui/section'
import { PLAN_FIELDS } from '@/lib/engine'
import { DraftScreen, type DraftScreenProps } from '../draft'
import '../engineering.css'
import { FoldedSection } from '../folded/folded-section'
import './plan.css'
import { ArrayForm } from './array-form'
import { ChosenForm } from './chosen-form'
import { HousingForm } from './housing-form'
import { PlanCanvas } from './plan-canvas'
import { PlanFiles } from './plan-files'
import { PlanFindings } from './plan-findings'
import { PlanList } from './plan-list'
import { PlanSizes } from './plan-sizes'
import { PlanStarts } from './plan-starts'
import { SketchPanel } from './sketch-panel'
import { ToolBar } from './tool-bar'
import { useMeasuredPlan } from './use-measured-plan'
import { usePlanEditor } from './use-plan-editor'

/** The part in plan, drawn by pointer, by number or by keyboard. The list beside the drawing holds all that is on it. */
export function PlanScreen({ stored, saveAction }: DraftScreenProps) {
  return (
    <DraftScreen stored={stored} saveAction={saveAction}>
      <Editor />
    </DraftScreen>
  )
}

function Editor() {
  const editor = usePlanEditor()
  const measured = useMeasuredPlan()
  const isEmpty = editor.plan.outline === null
  return (
    <>
      {isEmpty && !editor.isReadOnly && (
        <PageSection title="Begin a plan" id="begin">
          <PlanStarts />
        </PageSection>
      )}
      <div className="bench plan-bench">
        <PageSection title="Plan" actions={<PlanFiles />}>
          {!editor.isReadOnly && <ToolBar editor={editor} />}
          <PlanCanvas editor={editor} measured={measured} />
          {editor.tool !== null && <SketchPanel editor={editor} />}
          <p role="status" className="small plan-status">
            {editor.said}
          </p>
        </PageSection>
        <div className="plan-side">
          <PageSection title="Sizes of areas and bends">
            <PlanSizes measured={measured} />
          </PageSection>
          {editor.chosen !== null && (
            <PageSection title="Chosen">
              <ChosenForm editor={editor} chosen={editor.chosen} />
            </PageSection>
          )}
          <PageSection title="What is drawn">
            <PlanList editor={editor} />
          </PageSection>
        </div>
      </div>
      {!isEmpty && (
        <>
          <PageSection title="Array">
            <ArrayForm editor={editor} />
          </PageSection>
          <PageSection title={PLAN_FIELDS.housing.label}>
            <HousingForm />
          </PageSection>
        </>
      )}
      <PageSection title="Findings">
        <PlanFindings editor={editor} measured={measured} />
      </PageSection>
      {!isEmpty && <FoldedSection />}
    </>
  )
}
