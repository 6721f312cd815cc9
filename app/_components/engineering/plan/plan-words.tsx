'use client'

import { memo } from 'react'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import type { Plan } from '@/lib/engine'
import { digitsOfResultLength, getShownUnit } from '@/lib/engine/units'
import { dimensionWay, measureDimension, type PlanListKey } from '@/lib/plan/edit'

interface PlanWordsProps {
  readonly plan: Plan
  readonly hidden: ReadonlySet<PlanListKey | 'outline'>
  readonly mmPerPx: number
}

/** What is written on the drawing: dimensions with their value, datums, notes, markings, and corners by their place. */
export const PlanWords = memo(function PlanWords({ plan, hidden, mmPerPx }: PlanWordsProps) {
  const unit = getShownUnit('mm', useLengthUnit().unit)
  const isShown = (list: PlanListKey) => !hidden.has(list)
  return (
    <g className="plan-words" fontSize={12 * mmPerPx}>
      {isShown('dimensions') &&
        plan.dimensions.map((dimension) => {
          const way = dimensionWay(dimension)
          const [[startX, startY], [endX, endY]] = way
          const digits = digitsOfResultLength(measureDimension(dimension), 'mm', unit)
          const [midX, midY] = [(startX + endX) / 2, -(startY + endY) / 2]
          return (
            <g key={dimension.id}>
              <polyline points={way.map(([x, y]) => `${x},${-y}`).join(' ')} className="plan-dimension" />
              <text
                x={midX}
                y={midY - 3 * mmPerPx}
                textAnchor="middle"
                {...(dimension.direction === 'along-y' ? { transform: `rotate(-90 ${midX} ${midY})` } : {})}
              >
                {dimension.isReference ? `(${digits})` : digits}
              </text>
            </g>
          )
        })}
      {isShown('datums') &&
        plan.datums.map(({ id, letter, fromMm, toMm }) => (
          <g key={id}>
            {toMm !== null && (
              <line x1={fromMm[0]} y1={-fromMm[1]} x2={toMm[0]} y2={-toMm[1]} className="plan-dimension" />
            )}
            <text x={fromMm[0]} y={-fromMm[1] - 3 * mmPerPx} textAnchor="middle">
              [{letter}]
            </text>
          </g>
        ))}
      {isShown('corners') &&
        plan.corners.map(({ id, atMm }) => (
          <circle key={id} cx={atMm[0]} cy={-atMm[1]} r={4 * mmPerPx} className="plan-dimension" />
        ))}
      {isShown('notes') &&
        plan.notes.map(({ id, text, atMm }, index) =>
          atMm === null ? null : (
            <text key={id} x={atMm[0]} y={-atMm[1]}>
              N{index + 1}
              {text.trim() === '' ? '' : `: ${text.trim().split('\n')[0]?.slice(0, 24)}`}
            </text>
          ),
        )}
      {isShown('markings') &&
        plan.markings.map(({ id, text, atMm }) => (
          <text key={id} x={atMm[0]} y={-atMm[1]}>
            “{text.slice(0, 24)}”
          </text>
        ))}
    </g>
  )
})
