'use server'

import { action } from '@/lib/server'

export const sendMailAgain = action('sendMailAgain')
