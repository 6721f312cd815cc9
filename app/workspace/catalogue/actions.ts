'use server'

import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action } from '@/lib/server'

export const addOwnItem = action(inputs.addOwnItemInput, data.addOwnItem)
export const changeOwnItem = action(inputs.changeOwnItemInput, data.changeOwnItem)
export const removeOwnItem = action(inputs.removeOwnItemInput, data.removeOwnItem)
export const changeDeliveredItem = action(inputs.changeDeliveredItemInput, data.changeDeliveredItem)
