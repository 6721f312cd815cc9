'use server'

import { action } from '@/lib/server'

export const addOwnItem = action('addOwnItem')
export const changeOwnItem = action('changeOwnItem')
export const removeOwnItem = action('removeOwnItem')
export const changeDeliveredItem = action('changeDeliveredItem')
