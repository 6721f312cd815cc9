'use server'

import * as data from '@/lib/data'
import { importSheetFileInput, previewSheetFileInput, saveSheetInput } from '@/lib/inputs'
import { action } from '@/lib/server'

export const previewSheetFile = action(previewSheetFileInput, data.previewSheetFile)
export const importSheetFile = action(importSheetFileInput, data.importSheetFile)
export const saveSheet = action(saveSheetInput, data.saveSheet)
