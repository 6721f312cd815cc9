'use server'

import { previewCatalogue as preview } from '@/lib/data'
import { previewCatalogueInput } from '@/lib/inputs'
import { action, actionOf } from '@/lib/server'

export const addOwnItem = action('addOwnItem')
export const changeOwnItem = action('changeOwnItem')
export const removeOwnItem = action('removeOwnItem')
export const changeDeliveredItem = action('changeDeliveredItem')
export const addProfile = action('addProfile')
export const changeProfile = action('changeProfile')
export const removeProfile = action('removeProfile')
export const importCatalogue = action('importCatalogue')
export const previewCatalogue = actionOf(previewCatalogueInput, preview)
