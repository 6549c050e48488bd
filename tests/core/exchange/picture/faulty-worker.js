// A worker that does to its process what a file may do to a decoder; the first byte of the task says what.
process.send({ ready: true })
process.on('message', ({ bytes }) => {
  if (bytes[0] === 1) process.abort()
  if (bytes[0] === 2) for (;;);
  if (bytes[0] === 3) process.exit(0)
  if (bytes[0] === 4) setTimeout(() => process.send({ ok: false, fault: 'broken', said: 'slow' }), 150)
  else if (bytes[0] === 0) process.send({ ok: false, fault: 'broken', said: JSON.stringify(process.env) })
})
