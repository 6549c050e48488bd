import * as z from 'zod'
import { LeaveDemo } from '#lib/schema/leave-demo'
import { leaveDemo as emptyDemo, readDemoContents } from '#lib/store/leave-demo'
import { leads, verb } from './verb'

/** What would go and what would stay; null where the shop is no demo. */
export const demoContents = verb('demo.contents', leads, z.object({}), () => readDemoContents())

/** Empties the demo shop and makes it the lead's own. */
export const leaveDemo = verb('demo.leave', leads, LeaveDemo, (actor, input) => emptyDemo(actor, input))
