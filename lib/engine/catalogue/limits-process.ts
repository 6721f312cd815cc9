import type { LimitDefinition } from './limit-definition'

/** Limits on how design team and fabricator work together. */
export const PROCESS_LIMITS = {
  reviewBeforeFreezeDays: {
    label: 'Days from the manufacturing review to the layout freeze',
    unit: 'days',
    sense: 'at-least',
    value: 0,
    allowed: { min: 0, max: 365 },
    sourceKey: 'ownChoice',
    note: 'Our choice: the day of the freeze is the latest that still helps.',
  },
  orderSlackDays: {
    label: 'Days left before the latest order date of materials not on the shelf',
    unit: 'days',
    sense: 'at-least',
    value: 0,
    allowed: { min: 0, max: 365 },
    sourceKey: 'ownChoice',
    note: 'Our choice: no days in hand. The latest order date is the need date less the lead time.',
  },
  panelUtilisationFraction: {
    label: 'Share of the panel that becomes parts',
    unit: 'fraction',
    sense: 'at-least',
    value: 0.5,
    allowed: { min: 0.01, max: 1 },
    sourceKey: 'ownChoice',
    note: 'Advice: no figure was found; half is our choice. Sheet materials are said to be 20 to 60 % of the price of flexible work (trade magazine 2024).',
  },
  costOverCheapestRatio: {
    label: 'Cost of this construction to the cheapest alternative that meets the need',
    unit: 'ratio',
    sense: 'at-most',
    value: 1.2,
    allowed: { min: 1, max: 10 },
    sourceKey: 'ownChoice',
    note: 'Our choice. Costs here are ratios from a table of steps and rates, never prices.',
  },
} as const satisfies Record<string, LimitDefinition>
