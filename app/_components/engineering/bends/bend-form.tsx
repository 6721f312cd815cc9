'use client'

import type { Bend } from '@/lib/engine'
import {
  ChoiceCell,
  FormCells,
  LongTextCell,
  makePlaces,
  NumberCell,
  ObservedCell,
  OptionalChoiceCell,
  OptionalNumberCell,
  OptionalPlanLengthCell,
  PlanLengthCell,
  TextCell,
} from '../cells'
import { updateBend, useDraft, useEdit } from '../draft'
import { FACE_CHOICES, HOLDER_CHOICES, MOTION_CHOICES, USE_CHOICES } from './words'

/** Everything that a bend states. */
export function BendForm({ bend, index }: { bend: Bend; index: number }) {
  const { state } = useDraft()
  const edit = useEdit()
  const at = makePlaces(['bends', index], `bend.${bend.id}`, bend.name || `bend ${index + 1}`)
  const set = (field: keyof Bend, change: Partial<Bend>) =>
    edit(at(field).key, (design) => updateBend(design, bend.id, (present) => ({ ...present, ...change })))
  const zones = state.design.construction.zones.map((zone) => ({
    value: zone.id,
    label: zone.kind === 'flex' ? zone.name : `${zone.name} (${zone.kind})`,
  }))
  return (
    <FormCells>
      <div className="form-grid">
        <TextCell label="Name" at={at('name')} value={bend.name} onChange={(name) => set('name', { name })} />
        <ChoiceCell
          label="Zone"
          at={at('zoneId')}
          value={bend.zoneId}
          choices={zones}
          onChange={(zoneId) => set('zoneId', { zoneId })}
        />
        <OptionalChoiceCell
          label="Use"
          at={at('use')}
          value={bend.use}
          choices={USE_CHOICES}
          emptyLabel="not stated"
          onChange={(use) => set('use', { use })}
        />
        <PlanLengthCell
          label="Inside radius"
          at={at('insideRadiusMm')}
          value={bend.insideRadiusMm}
          onChange={(insideRadiusMm) => set('insideRadiusMm', { insideRadiusMm })}
        />
        <PlanLengthCell
          label="Tolerance of the radius, ±"
          at={at('radiusToleranceMm')}
          value={bend.radiusToleranceMm}
          onChange={(radiusToleranceMm) => set('radiusToleranceMm', { radiusToleranceMm })}
        />
        <NumberCell
          label="Angle"
          unit="°"
          at={at('angleDeg')}
          value={bend.angleDeg}
          onChange={(angleDeg) => set('angleDeg', { angleDeg })}
        />
        <ChoiceCell
          label="On the inside"
          at={at('insideFace')}
          value={bend.insideFace}
          choices={FACE_CHOICES}
          onChange={(insideFace) => set('insideFace', { insideFace })}
        />
        <PlanLengthCell
          label="Length along the axis"
          hint="The width of the part there."
          at={at('axisLengthMm')}
          value={bend.axisLengthMm}
          onChange={(axisLengthMm) => set('axisLengthMm', { axisLengthMm })}
        />
        {bend.use === 'dynamic' && (
          <ChoiceCell
            label="Motion"
            at={at('motion')}
            value={bend.motion}
            choices={MOTION_CHOICES}
            onChange={(motion) => set('motion', { motion })}
          />
        )}
        <OptionalNumberCell
          label="Required cycles"
          hint={bend.use === 'dynamic' ? 'There and back is one. 2e6 is two million.' : 'Needed for dynamic use only.'}
          unit="cycles"
          at={at('requiredCycles')}
          value={bend.requiredCycles}
          onChange={(requiredCycles) => set('requiredCycles', { requiredCycles })}
        />
        <OptionalChoiceCell
          label="Radius held by"
          hint="Without it, handling can bend the part tighter than was checked."
          at={at('radiusHeldBy')}
          value={bend.radiusHeldBy}
          choices={HOLDER_CHOICES}
          onChange={(radiusHeldBy) => set('radiusHeldBy', { radiusHeldBy })}
        />
        <OptionalPlanLengthCell
          label="Distance to the rigid edge"
          hint="From the bend's nearest edge to a rigid or stiffened zone."
          at={at('distanceToRigidMm')}
          value={bend.distanceToRigidMm}
          onChange={(distanceToRigidMm) => set('distanceToRigidMm', { distanceToRigidMm })}
        />
        <ObservedCell
          label="Strain relief at that transition"
          at={at('strainReliefAtTransition')}
          value={bend.strainReliefAtTransition}
          onChange={(strainReliefAtTransition) => set('strainReliefAtTransition', { strainReliefAtTransition })}
        />
        <ObservedCell
          label="Tried on a paper or film model"
          at={at('triedOnModel')}
          value={bend.triedOnModel}
          onChange={(triedOnModel) => set('triedOnModel', { triedOnModel })}
        />
        {bend.use === 'dynamic' && <FlexTestCells bend={bend} index={index} />}
        <div className="field-wide">
          <LongTextCell label="Note" at={at('note')} value={bend.note} onChange={(note) => set('note', { note })} />
        </div>
      </div>
    </FormCells>
  )
}

/** How flexing is tested: what a drawing for continuous flexing states beside the cycles (MIL-PRF-50884F). */
function FlexTestCells({ bend, index }: { bend: Bend; index: number }) {
  const edit = useEdit()
  const at = makePlaces(['bends', index], `bend.${bend.id}`, bend.name || `bend ${index + 1}`)
  const set = (field: keyof Bend['flexTest'], change: Partial<Bend['flexTest']>) =>
    edit(at('flexTest', field).key, (design) =>
      updateBend(design, bend.id, (present) => ({ ...present, flexTest: { ...present.flexTest, ...change } })),
    )
  const { cyclesPerMinute, travelMm, mandrelDiameterMm, pointsOfApplication } = bend.flexTest
  return (
    <>
      <OptionalNumberCell
        label="Test: cycles per minute"
        at={at('flexTest', 'cyclesPerMinute')}
        value={cyclesPerMinute}
        onChange={(value) => set('cyclesPerMinute', { cyclesPerMinute: value })}
      />
      <OptionalPlanLengthCell
        label="Test: travel"
        at={at('flexTest', 'travelMm')}
        value={travelMm}
        onChange={(value) => set('travelMm', { travelMm: value })}
      />
      <OptionalPlanLengthCell
        label="Test: mandrel diameter"
        at={at('flexTest', 'mandrelDiameterMm')}
        value={mandrelDiameterMm}
        onChange={(value) => set('mandrelDiameterMm', { mandrelDiameterMm: value })}
      />
      <div className="field-wide">
        <LongTextCell
          label="Test: points of application"
          at={at('flexTest', 'pointsOfApplication')}
          value={pointsOfApplication}
          onChange={(value) => set('pointsOfApplication', { pointsOfApplication: value })}
        />
      </div>
    </>
  )
}
