'use client'

import { Label } from 'react-aria-components/Label'
import { Slider, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components/Slider'
import { describeFoldState } from '@/lib/drawing'
import type { FoldStep } from '@/lib/engine/folding'

interface FoldSliderProps {
  readonly steps: readonly FoldStep[]
  readonly made: number
  readonly onChange: (made: number) => void
}

/** From flat to folded, one bend after the other; arrow keys move by a tenth of a bend, Page Up and Page Down by more. */
export function FoldSlider({ steps, made, onChange }: FoldSliderProps) {
  return (
    <Slider
      className="fold-slider"
      minValue={0}
      maxValue={steps.length}
      step={0.1}
      value={made}
      onChange={(value) => onChange(value as number)}
    >
      <Label>How far it is folded</Label>
      <SliderOutput>{describeFoldState(steps, made)}</SliderOutput>
      <SliderTrack className="fold-track">
        {steps.slice(1).map(({ bendId }, at) => (
          <span
            key={bendId}
            className="fold-stop"
            style={{ insetInlineStart: `${((at + 1) / steps.length) * 100}%` }}
          />
        ))}
        <SliderThumb className="fold-thumb" />
      </SliderTrack>
    </Slider>
  )
}
