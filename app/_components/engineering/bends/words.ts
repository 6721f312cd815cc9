import { BEND_FIELDS, sayChoice } from '@/lib/engine'

export function getUseLabel(use: string | null): string {
  return use === null ? 'use not stated' : sayChoice(BEND_FIELDS.use, use)
}
