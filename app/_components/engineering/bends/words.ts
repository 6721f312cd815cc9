import { BEND_FIELDS, getChoiceWord } from '@/lib/engine'

export function getUseLabel(use: string | null): string {
  return use === null ? 'use not stated' : getChoiceWord(BEND_FIELDS.use, use)
}
