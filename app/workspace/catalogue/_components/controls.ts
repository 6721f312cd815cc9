import type { Control } from 'react-hook-form'
import type { z } from 'zod'
import type { addOwnItemInput, addProfileInput } from '@/lib/inputs'

/** Forms of a new item and of one that is there have the same fields. */
export type ItemControl = Control<z.input<typeof addOwnItemInput>, unknown, z.output<typeof addOwnItemInput>>

/** The same of profiles. */
export type ProfileControl = Control<z.input<typeof addProfileInput>, unknown, z.output<typeof addProfileInput>>
