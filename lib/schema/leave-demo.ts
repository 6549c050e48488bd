import * as z from 'zod'
import { text, uuid } from './fields'
import { currency, timeZone } from './shop'

/** What the lead says to leave the demo shop: its name as a confirmation, and what the own shop is called. */
export const LeaveDemo = z.object({
  id: uuid(),
  confirm: text('the name of the demo shop', 200),
  name: text('the name of your shop'),
  timeZone: timeZone(),
  currency: currency(),
})
export type LeaveDemo = z.output<typeof LeaveDemo>
