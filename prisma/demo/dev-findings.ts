import { PatchSketch } from '#lib/schema/patch'
import { previewPatch, sketchPatch } from '#lib/services/patches'
import { closeDatabase } from '#lib/store/db'
import { idOf } from './base/ids'
import { areaId } from './data/face'
import { patchIdOf, planIdOf, plans } from './data/plans'
import { actorOf } from './write/people'

void sketchPatch
for (const story of plans) {
  const sketch = PatchSketch.parse({
    id: planIdOf(story.mould, story.number, story.version),
    patchId: patchIdOf(story.mould, story.number),
    mouldId: idOf(`mould/${story.mould}`),
    areaId: areaId(story.mould, story.area),
    title: story.title,
    reason: story.reason,
    measuredThicknessMm: [],
    nextPartCureC: null,
    note: story.note,
    ...story.sketch,
  })
  const t = Date.now()
  const { outcome } = await previewPatch(actorOf('MO'), sketch)
  console.log(`\n=== ${story.mould} ${story.number}.${story.version} ${story.title} (${Date.now() - t} ms)`)
  if (!outcome.ok) {
    console.log(outcome.reason)
    continue
  }
  console.log(
    outcome.result.value.place,
    JSON.stringify(outcome.result.value.lengths.lengthMm),
    outcome.result.value.jobLines.map((l) => l.code).join(' '),
  )
  for (const f of outcome.result.findings)
    console.log(`  ${f.severity.toUpperCase()} ${f.code}: ${f.text} [${f.place}] -> ${f.cure}`)
}
await closeDatabase()
